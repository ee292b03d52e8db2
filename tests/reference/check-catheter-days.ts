import { expect } from "vitest";
import { z } from "zod";
import { catheterKind } from "../../shared/vocabulary.ts";
import { countsAsIndwelling } from "../../src/domain/counting/counts-as-catheter-day.ts";
import { eligibilityDays, eligibleOn } from "../../src/domain/counting/eligibility-day.ts";
import { dayOf, textOf } from "./day-text.ts";
import type { ReferenceCase } from "./read-data.ts";

const catheterDaysCase = {
  inputs: z.object({
    first_inpatient_date: z.string(),
    IUC_intervals: z.array(z.object({ in: z.string(), out: z.string() })),
    candidate_DOEs: z.array(z.string()),
  }),
  expected: z.object({
    IUC_day_by_date: z.record(z.string(), z.number()),
    CAUTI_eligible_on_DOE: z.record(z.string(), z.boolean()),
  }),
};

/** The eligibility day of every date, and whether an event on each candidate date can be catheter-associated. */
export function checkEligibility(one: ReferenceCase): void {
  const inputs = catheterDaysCase.inputs.parse(one.inputs);
  const expected = catheterDaysCase.expected.parse(one.expected);
  const first = dayOf(inputs.first_inpatient_date);
  const days = eligibilityDays({
    catheterDays: inputs.IUC_intervals.map((stretch) => ({ first: dayOf(stretch.in), last: dayOf(stretch.out) })),
    // The cases name no discharge: the patient stays well beyond the last candidate day.
    inpatientDays: [{ first, last: first + 60 }],
  });
  expect(Object.fromEntries([...days].map(([day, number]) => [textOf(day), number]))).toEqual(expected.IUC_day_by_date);
  const eligible = inputs.candidate_DOEs.map((text) => [text, eligibleOn(days, dayOf(text))] as const);
  expect(eligible.length).toBeGreaterThan(0);
  expect(Object.fromEntries(eligible)).toEqual(expected.CAUTI_eligible_on_DOE);
}

/** The devices of the cases in the words of the trade's list. */
const devices: Record<string, string[]> = {
  "Foley catheter used for continuous irrigation": ["indwelling-urethral"],
  ileoconduit: ["ileal-conduit"],
  "suprapubic catheter plus Foley catheter": ["suprapubic", "indwelling-urethral"],
};

/** Whether a device, or one of several, counts as an indwelling urinary catheter. */
export function checkDevice(one: ReferenceCase): void {
  const kinds = z.array(catheterKind).nonempty().parse(devices[z.string().parse(one.inputs.device)]);
  expect(kinds.some(countsAsIndwelling)).toBe(one.expected.counts_as_indwelling_urinary_catheter);
}
