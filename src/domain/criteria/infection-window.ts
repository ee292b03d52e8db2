import type { WindowRule } from "./rule-kinds.ts";
import { chapter2, chapter7, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

/** An element may lie this many days before the first inpatient day. */
const daysBeforeAdmission = 2;

export const infectionWindow: WindowRule = {
  id: "infection-window",
  title: "Infection window period",
  says: "The day on which the urine was collected, 3 days before and 3 days after; not further back than 2 days before the first inpatient day. All elements must lie in it.",
  sources: [chapter2, chapter7],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Seven days around the culture",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew }] },
      status: "held",
      says: "7 March to 13 March 2024",
    },
    {
      title: "A culture of the first inpatient day reaches back two days only",
      editionId: "us-2024",
      story: { urine: [{ day: 1, grew }] },
      status: "held",
      says: "elements count from 28 February",
    },
  ],
  windowOf(anchorDay, { firstDay }, { edition }) {
    const { windowDays } = edition.options;
    const first = anchorDay - windowDays;
    return { first, last: anchorDay + windowDays, usableFrom: Math.max(first, firstDay - daysBeforeAdmission) };
  },
};
