import { firstWardOn } from "./location-of-attribution.ts";
import type { AttributionRule } from "./rule-kinds.ts";
import { ourReading, sinceEcdc2017 } from "./sources.ts";

export const locationOnOnset: AttributionRule = {
  id: "location-on-onset",
  title: "Ward of the day of onset",
  says: "The first ward of the day of onset, or of the day before where the patient was on none.",
  sources: [ourReading("The European protocol's rule of transfer was not read")],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "The day after a transfer",
      editionId: "ecdc-2017",
      story: {
        wards: [
          [1, 1, 9],
          [2, 9, null],
        ],
        urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }],
        signs: [{ day: 10, sign: "dysuria" }],
      },
      status: "held",
      says: "ward 2",
    },
  ],
  wardOf: (date, episode) => firstWardOn(date, episode) ?? firstWardOn(date - 1, episode),
};
