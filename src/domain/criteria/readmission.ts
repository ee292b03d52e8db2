import type { Rule } from "./rule.ts";
import { ourReading, sinceUs2024 } from "./sources.ts";

export const readmission: Rule = {
  id: "readmission",
  title: "Back within a day",
  says: "Two stays without a full day outside between them are read as one admission, or each as its own: the edition chooses, and the other reading is shown where it says something else.",
  sources: [ourReading("Readmission within a day is not told in what was read")],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Discharged and back the next day, with the infection on the second day of the second stay",
      editionId: "us-2024",
      story: {
        wards: [
          [1, 1, 10],
          [2, 11, null],
        ],
        newStayAt: [1],
        urine: [{ day: 13, grew: [["Escherichia coli", ">100000"]] }],
        signs: [{ day: 12, sign: "dysuria" }],
      },
      status: "noted",
      says: "Each stay is its own",
    },
  ],
};
