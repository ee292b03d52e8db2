import { eligibleOn } from "../counting/eligibility-day.ts";
import type { DeviceRule } from "./rule-kinds.ts";
import { chapter7, chapter7FromMemory, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const urine = [{ day: 10, grew }];
const signs = [{ day: 10, sign: "38.4" }] as const;

export const catheterEligibility: DeviceRule = {
  id: "catheter-eligibility",
  title: "Catheter-associated",
  says: "On the date of event an indwelling urethral catheter had been in place for more than 2 consecutive days on inpatient wards, and was there for any part of the day or removed the day before. The day of insertion, or of arrival with a catheter, is day 1; a full day without one starts the count anew.",
  sources: [chapter7, chapter7FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Catheter day 3",
      editionId: "us-2024",
      story: { catheters: [[8, null]], urine, signs },
      status: "held",
    },
    {
      title: "Catheter day 2",
      editionId: "us-2024",
      story: { catheters: [[9, null]], urine, signs },
      status: "noted",
    },
    {
      title: "Two days after the removal",
      editionId: "us-2024",
      story: { catheters: [[2, 8]], urine, signs },
      status: "noted",
    },
    {
      title: "Nobody knows whether it was removed two days before or later",
      editionId: "us-2024",
      story: { catheters: [[2, 8]], latestRemoval: 10, urine, signs },
      status: "cannot-tell",
      says: "removed",
    },
  ],
  tells: {
    held: "a catheter had been in place for more than 2 days in a row, up to that day or the day before",
    failed: "no catheter had been in place for more than 2 days in a row, up to that day or the day before",
  },
  isAssociated: (date, episode, world) => eligibleOn(world.eligibility(episode), date),
};
