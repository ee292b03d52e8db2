import type { DateRule } from "./rule-kinds.ts";
import { ecdcFromMemory, sinceEcdc2017 } from "./sources.ts";

export const dateOfOnset: DateRule = {
  id: "date-of-onset",
  title: "Date of onset",
  says: "The day of the first sign or symptom.",
  sources: [ecdcFromMemory],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "Fever two days after the culture",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }], signs: [{ day: 12, sign: "38.6" }] },
      status: "held",
      says: "12 March 2024",
    },
  ],
  dayOf: "the first sign",
  anchorDates: false,
  dateOf: (firstElementDay) => firstElementDay,
};
