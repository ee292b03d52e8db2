import { normalUpperQuantile } from "./normal.ts";
import { type Proportion, type ProportionLimits, withoutLimits } from "./proportion.ts";

/**
 * Wilson's score limits of a proportion, without correction for continuity; for a utilization ratio the limits that
 * are shown. They always lie from 0 to 1.
 * Special cases: a whole of 0, or parts that are estimates, have no limits, with the reason. A Problem for figures that
 * cannot be. Catheter-days of one patient follow each other, so the true uncertainty is larger: say so beside them.
 * Source: E. B. Wilson, J Am Stat Assoc 1927;22:209-212 (from memory; values checked against statsmodels).
 * Error: below 1e-13, absolute.
 */
export function wilsonLimits(input: Proportion): ProportionLimits {
  const none = withoutLimits(input);
  if (none) return none;
  const { part, whole, level } = input;
  const z = normalUpperQuantile((1 - level) / 2);
  const zz = z * z;
  const middle = (part + zz / 2) / (whole + zz);
  const reach = (z * Math.sqrt((part * (whole - part)) / whole + zz / 4)) / (whole + zz);
  const lower = { value: part === 0 ? 0 : Math.max(0, middle - reach) };
  return { lower, upper: { value: part === whole ? 1 : Math.min(1, middle + reach) } };
}
