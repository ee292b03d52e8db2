import type { DayNumber } from "../days/day-number.ts";
import type { AttributionRule } from "./rule-kinds.ts";
import { chapter7, sinceUs2024 } from "./sources.ts";
import type { Episode } from "./world.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const urine = [{ day: 10, grew }];
const signs = [{ day: 10, sign: "dysuria" }] as const;

export const locationOfAttribution: AttributionRule = {
  id: "location-of-attribution",
  title: "Location of attribution",
  says: "The inpatient ward of the date of event; on the day of a transfer and the day after, the ward that transferred; with several transfers, the first ward of the day before. In one line: the first inpatient ward of the day before the date of event, or else of that date.",
  sources: [chapter7],
  inForce: sinceUs2024,
  examples: [
    {
      title: "The day after a transfer belongs to the first ward",
      editionId: "us-2024",
      story: {
        wards: [
          [1, 1, 9],
          [2, 9, null],
        ],
        urine,
        signs,
      },
      status: "held",
      says: "ward 1",
    },
    {
      title: "Two days after a transfer belongs to the second",
      editionId: "us-2024",
      story: {
        wards: [
          [1, 1, 8],
          [2, 8, null],
        ],
        urine,
        signs,
      },
      status: "held",
      says: "ward 2",
    },
    {
      title: "On leave on both days",
      editionId: "us-2024",
      story: {
        wards: [
          [1, 1, 7],
          [1, 12, null],
        ],
        urine,
        signs,
      },
      status: "cannot-tell",
    },
  ],
  wardOf: (date, episode) => firstWardOn(date - 1, episode) ?? firstWardOn(date, episode),
};

/** The first inpatient ward of a day, on the patient's way. */
export function firstWardOn(day: DayNumber, { wards }: Episode): number | null {
  return wards.find(({ first, last }) => first <= day && day <= last)?.wardId ?? null;
}
