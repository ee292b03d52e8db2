import type { PolicyBody } from "../../../shared/policy.ts";

/** How a catheter stands to the threshold on one day. */
export interface ThresholdOnDay {
  /** Days past it; 0 up to the threshold, and where there is none. */
  readonly daysPast: number;
  /** The eligibility day after which it is past; null: there is none. */
  readonly thresholdDays: number | null;
  /** Whether it is the threshold of its indication, rather than the general one. */
  readonly ofIndication: boolean;
}

/**
 * The threshold on a day: that of the indication in force, else the general one. It is on the eligibility day, which
 * goes on across an exchange, and not on the age of one catheter. A day without a number is never past.
 * That there is a threshold, and how many days it has, is the unit's own choice: no guideline gives one.
 */
export function thresholdOn(
  eligibilityDay: number | null,
  indication: string | null,
  { thresholdDays: general, thresholdByIndication }: Pick<PolicyBody, "thresholdDays" | "thresholdByIndication">,
): ThresholdOnDay {
  // Own keys only: an indication may be called anything.
  const ofIndication = indication !== null && Object.hasOwn(thresholdByIndication, indication);
  const thresholdDays = (ofIndication ? thresholdByIndication[indication] : general) ?? null;
  const daysPast = eligibilityDay === null || thresholdDays === null ? 0 : Math.max(0, eligibilityDay - thresholdDays);
  return { daysPast, thresholdDays, ofIndication };
}
