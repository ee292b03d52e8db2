import type { PeriodRule } from "./rule-kinds.ts";
import { chapter2FromMemory, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const urine = [{ day: 10, grew }];
const signs = [{ day: 8, sign: "38.4" }] as const;

export const bloodstreamAttribution: PeriodRule = {
  id: "bloodstream-attribution",
  title: "Secondary bloodstream infection",
  says: "From the first day of the window to the last day of the repeat infection timeframe, 14 to 17 days, blood with a bacterium that matches the urine culture makes a bloodstream infection secondary to the urinary tract infection. Yeasts never do.",
  sources: [chapter2FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Matching blood on the last day",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine, signs, blood: [{ day: 21, grew: [["E. coli", null]] }] },
      status: "held",
    },
    {
      title: "Matching blood a day later",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine, signs, blood: [{ day: 22, grew: [["E. coli", null]] }] },
      status: "noted",
      says: "7 March to 21 March 2024",
    },
    {
      title: "The blood culture is pending",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine, signs, blood: [{ day: 12, status: "pending" }] },
      status: "cannot-tell",
    },
  ],
  periodOf(date, window, world) {
    const { bloodstreamPeriodFrom, repeatDays } = world.edition.options;
    const first = bloodstreamPeriodFrom === "usable-window" ? window.usableFrom : window.first;
    return { first, last: date + repeatDays - 1 };
  },
};
