import type { Baseline } from "./baseline.ts";

/** Whether a baseline is of other hospitals. One of wards is an earlier period of one's own. */
export function isNational(baseline: Baseline): boolean {
  return baseline.kind === "model" || baseline.by === "ward-type";
}

/** Why infections by a reading of one's own are not compared with those of others. */
export const nonDefaultReading = "Non-default reading: not comparable with a baseline of other hospitals.";
