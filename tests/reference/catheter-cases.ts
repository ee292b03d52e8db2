import { expect } from "vitest";
import { z } from "zod";
import type { CasePatient } from "./case-timeline.ts";
import { textOf } from "./day-text.ts";
import type { ReferenceCase } from "./read-data.ts";
import { determineCase, eventIn, infectionsOn, lastOf } from "./timeline-cases.ts";

const catheterCase = z.object({
  first_inpatient_date: z.string(),
  IUC_intervals: z.array(z.object({ in: z.string(), out: z.string() })),
  candidate_DOEs: z.array(z.string()),
});

/** C02 to C08: an infection on each candidate day alone, and whether it is catheter-associated. */
export function checkEligibleDates({ inputs, expected }: ReferenceCase): void {
  const told = catheterCase.parse(inputs);
  const wards = [{ ward: 1, from: told.first_inpatient_date, to: null }];
  const computed = told.candidate_DOEs.map((date) => {
    const signs = [{ date, sign: "temperature", celsius: "38.6" }] as const;
    const event = eventIn(
      lastOf(determineCase({ ...infectionsOn([date]), wards, catheters: told.IUC_intervals, signs })),
    );
    expect(textOf(event.dateOfEvent)).toBe(date);
    return [date, event.deviceAssociated];
  });
  expect(Object.fromEntries(computed)).toEqual(expected.CAUTI_eligible_on_DOE);
}

type Catheters = NonNullable<CasePatient["catheters"]>;
const from = "2024-06-02";
const devices: Readonly<Record<string, Catheters>> = {
  "Foley catheter used for continuous irrigation": [{ in: from, out: null }],
  ileoconduit: [{ in: from, out: null, kind: "ileal-conduit" }],
  "suprapubic catheter plus Foley catheter": [
    { in: from, out: null, kind: "suprapubic" },
    { in: from, out: null },
  ],
};

/** C12, C18, C19: whether an infection with the device in place is catheter-associated. */
export function checkDevices({ inputs, expected }: ReferenceCase): void {
  const catheters = devices[z.string().parse(inputs.device)];
  if (!catheters) throw new Error("the device is not known");
  const signs = [{ date: "2024-06-10", sign: "temperature", celsius: "38.6" }] as const;
  const event = eventIn(lastOf(determineCase({ ...infectionsOn(["2024-06-10"]), catheters, signs })));
  expect(event.deviceAssociated).toBe(expected.counts_as_indwelling_urinary_catheter);
}
