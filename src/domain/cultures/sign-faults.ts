import { boundFaults } from "../../../shared/bounds/bounds.ts";
import type { Fault } from "../../../shared/problems.ts";
import type { RecordedSign } from "./sign.ts";

/**
 * What cannot be true of a sign: `sign-contradicts` for a temperature of another sign or of one that is not there, and
 * for another cause of a sign that is not there; `out-of-bounds` and `unusual-value` for a temperature. `at` is the
 * pointer of the sign in the input; `confirmed` holds pointers of unusual values that somebody has checked.
 */
export function signFaults(
  { sign, finding, temperature, otherCause }: Pick<RecordedSign, "sign" | "finding" | "temperature" | "otherCause">,
  { at, confirmed }: { at: string; confirmed: readonly string[] },
): Fault[] {
  const faults: Fault[] = [];
  const contradicts = (field: string, detail: string) =>
    faults.push({ code: "sign-contradicts", pointer: `${at}/${field}`, detail });
  if (otherCause && finding !== "present") contradicts("otherCause", "What was not there has no other cause.");
  if (temperature === null) return faults;
  if (sign !== "temperature") contradicts("temperature", "This sign has no temperature.");
  else if (finding !== "present") contradicts("temperature", "A temperature was measured and not recorded as such.");
  const value = temperature.hundredths / 100;
  const quantity = temperature.unit === "C" ? "temperatureCelsius" : "temperatureFahrenheit";
  return [...faults, ...boundFaults([{ quantity, value, pointer: `${at}/temperature` }], { ageDays: null, confirmed })];
}
