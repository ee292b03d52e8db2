import type { DeviceRule } from "./rule-kinds.ts";
import { ecdcFromMemory, sinceEcdc2017 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const urine = [{ day: 10, grew }];
const signs = [{ day: 10, sign: "38.5" }] as const;
/** Whether day 7 itself counts is not confirmed: it does here. */
const lookBackDays = 7;

export const catheterSevenDays: DeviceRule = {
  id: "catheter-seven-days",
  title: "Catheter in the 7 days before onset",
  says: "An indwelling urethral catheter was in place, even if only at times, on the day of onset or in the 7 days before.",
  sources: [ecdcFromMemory],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "Removed 6 days before onset",
      editionId: "ecdc-2017",
      story: { catheters: [[1, 4]], urine, signs },
      status: "held",
    },
    {
      title: "Removed 8 days before onset",
      editionId: "ecdc-2017",
      story: { catheters: [[1, 2]], urine, signs },
      status: "noted",
    },
    {
      title: "Nobody knows whether it was removed 8 days before onset or later",
      editionId: "ecdc-2017",
      story: { catheters: [[1, 2]], latestRemoval: 5, urine, signs },
      status: "cannot-tell",
    },
  ],
  tells: {
    held: "or in the 7 days before a catheter was in place",
    failed: "and in the 7 days before no catheter was in place",
  },
  isAssociated(date, _episode, { catheters }) {
    return catheters.some(({ first, last }) => first <= date && last >= date - lookBackDays);
  },
};
