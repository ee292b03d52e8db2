import { assertAmount } from "./amounts.ts";
import type { Ratio } from "./ratio.ts";

/**
 * The device utilization ratio: catheter-days / patient-days, a plain fraction of 0 to 1, unrounded.
 * Both are denominator days (present at the daily census); catheter-days may be an estimate, so need not be whole.
 * Null with a reason when there are no patient-days. Throws a plain Error for amounts that cannot be: negative, not
 * finite, or more catheter-days than patient-days.
 * Source: CDC Patient Safety Component Manual, chapter 7; form read in the Korean ICU surveillance reports 2018-2021.
 */
export function utilization(counted: { patientDays: number; catheterDays: number }): Ratio {
  assertAmount("patientDays", counted.patientDays);
  assertAmount("catheterDays", counted.catheterDays);
  if (counted.catheterDays > counted.patientDays) {
    throw new Error(`${counted.catheterDays} catheter-days exceed ${counted.patientDays} patient-days`);
  }
  if (counted.patientDays === 0) {
    return { value: null, reason: "There are no patient-days, so there is no utilization ratio." };
  }
  return { value: counted.catheterDays / counted.patientDays };
}
