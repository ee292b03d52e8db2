import type { SheetColumn } from "./sheet.ts";

/** What one figure of a month is called, and what opens it down to the rows that it came from. */
interface FigureWords {
  readonly label: string;
  readonly kind: SheetColumn["kind"];
  /** What one is one of. */
  readonly unit: string;
  /** Behind it: ward days, infections, or the catheters and days of care. */
  readonly rows: "ward-days" | "infections" | "care" | null;
  /** It is of the instant at which it was read and changes with every hour: no difference from what was signed. */
  readonly momentary?: true;
}

const rate = { kind: "rate", rows: "infections" } as const;
const care = { kind: "whole", rows: "care" } as const;
const ofDays = { kind: "whole", unit: "catheter-days", rows: "care" } as const;

/** The figures of a month, of each ward and of all, in the order in which they are printed. */
export const figureWords = {
  patient_days: { label: "Patient-days", kind: "whole", unit: "patient-days", rows: "ward-days" },
  catheter_days: { label: "Catheter-days", kind: "whole", unit: "catheter-days", rows: "ward-days" },
  utilization: {
    label: "Device utilization ratio",
    kind: "ratio",
    unit: "catheter-days per patient-day",
    rows: "ward-days",
  },
  infections: { label: "CAUTIs", kind: "whole", unit: "infections", rows: "infections" },
  cultures_waiting: {
    label: "Cultures waiting for confirmation",
    kind: "whole",
    unit: "cultures, not counted yet",
    rows: "infections",
  },
  cannot_tell: {
    label: "Cultures that cannot be determined",
    kind: "whole",
    unit: "cultures, not counted",
    rows: "infections",
  },
  rate: { label: "CAUTI rate", ...rate, unit: "infections per 1,000 catheter-days" },
  population_rate: { label: "Population rate", ...rate, unit: "infections per 10,000 patient-days" },
  sir: { label: "SIR", kind: "ratio", unit: "infections per infection predicted", rows: "infections" },
  cad: { label: "CAD", kind: "amount", unit: "infections more than the target allows", rows: "infections" },
  sur: { label: "SUR", kind: "ratio", unit: "catheter-days per catheter-day predicted", rows: "ward-days" },
  reviews_in_time: { label: "Reviews done in time", kind: "ratio", unit: "reviews of those due", rows: "care" },
  bundle_kept: {
    label: "Bundle compliance",
    kind: "ratio",
    unit: "maintenance bundle checks with every item kept",
    rows: "care",
  },
  days_past_threshold: { label: "Days past threshold", ...ofDays },
  days_without_indication: { label: "Days with no indication recorded", ...ofDays },
  days_outside_policy: { label: "Days with an indication outside the policy", ...ofDays },
  dwell_median: { label: "Median dwell time", kind: "amount", unit: "days", rows: "care" },
  insertions: { label: "Catheters inserted", ...care, unit: "catheters" },
  days_doubtful: { label: "Days without a confirmed catheter", ...ofDays },
  // A month with any of these cannot be signed, so a signed one has none.
  absences_unknown: {
    label: "Patient-days with no unit recorded",
    kind: "whole",
    unit: "patient-days",
    rows: null,
    momentary: true,
  },
  counts_missing: { label: "Manual counts missing", kind: "whole", unit: "days", rows: null },
  catheters_open: { label: "Catheters in place now", kind: "whole", unit: "catheters", rows: null, momentary: true },
} as const satisfies Record<string, FigureWords>;
/** The note of every figure that cultures could still change. */
export function notFinalWords(open: number): string {
  return `not final: ${open} open`;
}
export type FigureKey = keyof typeof figureWords;
export const figureKeys = Object.keys(figureWords) as FigureKey[];

/** Digits of a figure as it is printed: ratios to a prediction have three decimals, other ratios and rates two. */
export function digitsOf(key: FigureKey): number {
  if (key === "sir" || key === "sur") return 3;
  const { kind } = figureWords[key];
  if (kind === "whole") return 0;
  return kind === "amount" ? 1 : 2;
}

/** What a figure is made of: a count as it is, a predicted number with three decimals, never with the noise of a float. */
export function amountText(amount: number): string {
  return Number.isInteger(amount) ? String(amount) : amount.toFixed(3);
}

/**
 * A figure as it was and as it is, at the digits in which it is printed. Where both would print alike, as many more as
 * tell them apart.
 */
export function differingTexts(key: FigureKey, was: number, is: number): readonly [string, string] {
  let digits = digitsOf(key);
  while (digits < 9 && was.toFixed(digits) === is.toFixed(digits)) digits += 1;
  return [was.toFixed(digits), is.toFixed(digits)];
}
