import type { OnsetRule } from "./rule-kinds.ts";
import { chapter2, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
/** From this hospital day on, an infection is healthcare-associated. */
const firstOwnDay = 3;

export const presentOnAdmission: OnsetRule = {
  id: "present-on-admission",
  title: "Present on admission",
  says: "A date of event on hospital day 1 or 2, or in the 2 days before, is present on admission; from hospital day 3 on, the infection is healthcare-associated. Hospital day 1 is the first day on an inpatient ward.",
  sources: [chapter2],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Hospital day 2",
      editionId: "us-2024",
      story: { urine: [{ day: 2, grew }], signs: [{ day: 2, sign: "38.5" }] },
      status: "held",
    },
    {
      title: "Hospital day 3",
      editionId: "us-2024",
      story: { urine: [{ day: 3, grew }], signs: [{ day: 3, sign: "38.5" }] },
      status: "noted",
      says: "healthcare-associated",
    },
    {
      title: "Nobody has said what the first ward is",
      editionId: "us-2024",
      story: {
        wards: [
          [1, 1, 3, null],
          [2, 3, null],
        ],
        urine: [{ day: 4, grew }],
        signs: [{ day: 4, sign: "38.5" }],
      },
      status: "cannot-tell",
      says: "ward",
    },
  ],
  onsetOf(date, { firstDay }) {
    return date - firstDay + 1 < firstOwnDay ? "present-on-admission" : "healthcare-associated";
  },
};
