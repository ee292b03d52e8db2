import { assertAmount, assertCount } from "./amounts.ts";
import type { Ratio } from "./ratio.ts";

/**
 * Events per 1,000 catheter-days, unrounded. Null with a reason when there are no catheter-days, even when events are
 * given. Throws a plain Error for events that are not a whole number of zero or more or days that are negative.
 * Source: CDC Patient Safety Component Manual, chapter 7; form read in the Korean ICU surveillance reports 2018-2021.
 */
export function catheterDayRate(counted: { events: number; catheterDays: number }): Ratio {
  assertCount("events", counted.events);
  assertAmount("catheterDays", counted.catheterDays);
  if (counted.catheterDays === 0) return { value: null, reason: "There are no catheter-days, so there is no rate." };
  return { value: (counted.events / counted.catheterDays) * 1_000 };
}

/**
 * Population rate: events per 10,000 patient-days, unrounded. Shown beside the catheter-day rate where catheter use is
 * being cut, because that rate can rise while fewer patients are harmed. Null with a reason when there are no
 * patient-days; throws as {@link catheterDayRate} does.
 * Source: Wright et al., Infect Control Hosp Epidemiol 2011;32:635-640.
 */
export function populationRate(counted: { events: number; patientDays: number }): Ratio {
  assertCount("events", counted.events);
  assertAmount("patientDays", counted.patientDays);
  if (counted.patientDays === 0) return { value: null, reason: "There are no patient-days, so there is no rate." };
  return { value: (counted.events / counted.patientDays) * 10_000 };
}
