import { boundFaults } from "../../../shared/bounds/bounds.ts";
import type { Fault } from "../../../shared/problems.ts";
import type { Zone } from "../days/zone.ts";
import type { SignText } from "./sign.ts";

/**
 * What cannot be true of a sign: `sign-contradicts` for a temperature of another sign or of one that is not there, for
 * another cause of a sign that is not there, and for the days of a chart review; `out-of-bounds` and `unusual-value` for
 * a temperature. `at` is the pointer of the sign in the input; `confirmed` holds pointers of unusual values that were
 * checked.
 */
export function signFaults(
  text: Omit<SignText, "marks">,
  { at, confirmed, zone }: { at: string; confirmed: readonly string[]; zone: Zone },
): Fault[] {
  const { sign, finding, temperature, otherCause } = text;
  const faults: Fault[] = reviewFaults(text, at, zone);
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

/** A chart review names when the chart was read, on or after the first day that it is about; nothing else does. */
function reviewFaults(
  { finding, day, at: hour, lastDay, readAt }: Omit<SignText, "marks">,
  at: string,
  zone: Zone,
): Fault[] {
  const fault = (field: string, detail: string, of = ""): Fault[] => [
    { code: "sign-contradicts", pointer: `${of}/${field}`, detail },
  ];
  if (finding !== "not-documented") {
    const detail = "Only a sign that was reviewed and not documented has it.";
    return [...(lastDay === null ? [] : fault("lastDay", detail)), ...(readAt === null ? [] : fault("readAt", detail))];
  }
  if (readAt === null) return fault("readAt", "A chart review needs the time at which the chart was read.");
  return [
    ...(hour === null ? [] : fault("time", "A sign that is not documented has no hour.", at)),
    ...(lastDay !== null && lastDay < day ? fault("lastDay", "It is before the first day of the review.") : []),
    ...(zone.dayOf(readAt) < day ? fault("readAt", "The chart was read before the first day of the review.") : []),
  ];
}
