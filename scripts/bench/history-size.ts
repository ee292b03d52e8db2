/** How large a history is and what it is drawn from. */
export interface HistorySize {
  readonly seed: number;
  readonly wardStays: number;
  readonly catheters: number;
  readonly years: number;
  readonly wards: number;
}

/** The facility of the benches: one zone with two clock changes a year. */
export const benchZone = "America/New_York";

/** The id of the only facility in a history. */
export const benchFacility = 1;

/** 2026-01-01 00:00 UTC: a history ends here, in UTC milliseconds. */
export const historyEnd = 1_767_225_600_000;
