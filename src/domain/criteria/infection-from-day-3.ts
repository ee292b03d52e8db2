import type { OnsetRule } from "./rule-kinds.ts";
import { ecdcSurvey, sinceEcdc2017 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const signs = [{ day: 2, sign: "dysuria" }] as const;

export const infectionFromDay3: OnsetRule = {
  id: "infection-from-day-3",
  title: "Healthcare-associated from day 3",
  says: "An onset on day 3 of the stay or later is healthcare-associated; on an earlier day when the patient had been discharged less than 2 days before, or when a catheter was placed on day 1 or 2. One that takes the place of another without a moment between goes on as the same.",
  sources: [ecdcSurvey],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "Onset on day 2, no catheter",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 2, grew }], signs },
      status: "held",
    },
    {
      title: "Onset on day 2, a catheter placed on day 1",
      editionId: "ecdc-2017",
      story: { catheters: [[1, null]], urine: [{ day: 2, grew }], signs },
      status: "noted",
    },
    {
      title: "Nobody has said what the first ward is",
      editionId: "ecdc-2017",
      story: {
        wards: [
          [1, 1, 3, null],
          [2, 3, null],
        ],
        urine: [{ day: 4, grew }],
        signs: [{ day: 4, sign: "dysuria" }],
      },
      status: "cannot-tell",
    },
  ],
  onsetOf(date, episode, { catheters, episodes }) {
    const { firstDay } = episode;
    if (date - firstDay + 1 >= 3) return "healthcare-associated";
    const earlier = episodes.slice(0, episodes.indexOf(episode));
    const isBack = earlier.some((one) => one.lastDay <= firstDay && firstDay - one.lastDay < 2 && date >= one.lastDay);
    const placed = catheters.some(({ first, time }) => time.start !== null && first >= firstDay && first <= date);
    return isBack || placed ? "healthcare-associated" : "present-on-admission";
  },
};
