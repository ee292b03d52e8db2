import type { WindowRule } from "./rule-kinds.ts";
import { ourReading, sinceEcdc2017 } from "./sources.ts";

export const evidenceWindow: WindowRule = {
  id: "evidence-window",
  title: "Days in which evidence belongs together",
  says: "Signs, cultures and other evidence within 3 days of each other belong to one infection.",
  sources: [ourReading("The European definitions name no window; the one of the United States is taken")],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "Seven days around the culture",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }] },
      status: "held",
      says: "7 March to 13 March 2024",
    },
  ],
  windowOf(anchorDay, _episode, { edition }) {
    const first = anchorDay - edition.options.windowDays;
    return { first, last: anchorDay + edition.options.windowDays, usableFrom: first };
  },
};
