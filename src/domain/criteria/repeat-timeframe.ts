import type { PeriodRule } from "./rule-kinds.ts";
import { chapter2, chapter2FromMemory, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

export const repeatTimeframe: PeriodRule = {
  id: "repeat-timeframe",
  title: "Repeat infection timeframe",
  says: "For 14 days, the date of event being day 1, no new urinary tract infection is counted in the same admission: its organisms join the first event, which stays as it was. Infections that were present on admission set it too.",
  sources: [chapter2, chapter2FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "The first event",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "dysuria" }] },
      status: "held",
      says: "10 March to 23 March 2024",
    },
    {
      title: "Ten days after an infection that was present on admission",
      editionId: "us-2024",
      story: {
        urine: [
          { day: 12, grew },
          { day: 2, grew },
        ],
        signs: [
          { day: 2, sign: "dysuria" },
          { day: 12, sign: "dysuria" },
        ],
      },
      status: "noted",
      says: "2 March 2024",
    },
  ],
  periodOf: (date, _window, { edition }) => ({ first: date, last: date + edition.options.repeatDays - 1 }),
};
