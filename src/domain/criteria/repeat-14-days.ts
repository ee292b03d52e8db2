import type { PeriodRule } from "./rule-kinds.ts";
import { ourReading, sinceEcdc2017 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

export const repeat14Days: PeriodRule = {
  id: "repeat-14-days",
  title: "One infection in 14 days",
  says: "Within 14 days of the onset of an infection, further evidence belongs to it.",
  sources: [
    ourReading(
      "How the European protocol parts two infections was not read; the 14 days of the United States are taken",
    ),
  ],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "The first infection",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "dysuria" }] },
      status: "held",
    },
    {
      title: "A week after another",
      editionId: "ecdc-2017",
      story: {
        urine: [
          { day: 12, grew },
          { day: 5, grew },
        ],
        signs: [
          { day: 5, sign: "dysuria" },
          { day: 12, sign: "dysuria" },
        ],
      },
      status: "noted",
    },
  ],
  periodOf: (date, _window, { edition }) => ({ first: date, last: date + edition.options.repeatDays - 1 }),
};
