import type { DateRule } from "./rule-kinds.ts";
import { chapter2, chapter7, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

export const dateOfEvent: DateRule = {
  id: "date-of-event",
  title: "Date of event",
  says: "The day on which the first element of the criterion occurs for the first time in the window: a sign, or the culture. Before the first inpatient day, it is that day.",
  sources: [chapter2, chapter7],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Fever three days before the culture dates the event",
      editionId: "us-2024",
      story: { catheters: [[1, null]], urine: [{ day: 10, grew }], signs: [{ day: 7, sign: "38.6" }] },
      status: "held",
      says: "7 March 2024",
    },
    {
      title: "Fever after the culture does not move it",
      editionId: "us-2024",
      story: { catheters: [[1, null]], urine: [{ day: 10, grew }], signs: [{ day: 12, sign: "38.6" }] },
      status: "held",
      says: "10 March 2024",
    },
    {
      title: "Fever two days before arrival makes the first inpatient day the date",
      editionId: "us-2024",
      story: { urine: [{ day: 1, grew }], signs: [{ day: -1, sign: "38.9" }] },
      status: "held",
      says: "1 March 2024",
    },
  ],
  dayOf: "the first element that was used",
  anchorDates: true,
  dateOf: (firstElementDay, { firstDay }) => Math.max(firstElementDay, firstDay),
};
