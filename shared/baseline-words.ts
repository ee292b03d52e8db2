/** What a baseline is. */
export const baselineKinds = {
  pooled: "Pooled rates and utilization by type of unit",
  "infection-model": "Log-linear model of infections for each catheter-day",
  "utilization-model": "Logistic model of catheter-days for each patient-day",
  "own-period": "The units' own counts of an earlier period",
} as const;
export type BaselineKind = keyof typeof baselineKinds;

const ofModels = ["term", "category", "from", "below", "coefficient", "standard_error"] as const;

/** The columns that rows of each kind may have, in the order of files. */
export const baselineColumns = {
  pooled: ["ward_type", "infections", "catheter_days", "patient_days", "rate_per_1000", "utilization", "note"],
  "infection-model": ofModels,
  "utilization-model": ofModels,
  "own-period": ["ward", "infections", "catheter_days", "patient_days", "note"],
} as const satisfies Record<BaselineKind, readonly string[]>;
