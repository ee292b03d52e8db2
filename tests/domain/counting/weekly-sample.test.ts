import { describe, expect, it } from "vitest";
import { weeklySample } from "../../../src/domain/counting/weekly-sample.ts";

describe("the weekly-sample estimate", () => {
  it("is left unrounded", () => {
    const sampled = [{ patients: 3, catheters: 1 }];
    expect(weeklySample({ sampled, monthPatientDays: 100 }).catheterDays).toEqual({ value: 100 / 3 });
  });

  it("equals the count when the sample is the whole month", () => {
    const sampled = Array.from({ length: 30 }, (_, day) => ({ patients: 20 + (day % 3), catheters: day % 7 }));
    const patientDays = sampled.reduce((sum, day) => sum + day.patients, 0);
    const catheterDays = sampled.reduce((sum, day) => sum + day.catheters, 0);
    const result = weeklySample({ sampled, monthPatientDays: patientDays });
    expect(result.catheterDays.value).toBe(catheterDays);
    expect(result.sampledPatientDays).toBe(patientDays);
  });

  it("weighs the sampled days by their patients, not equally", () => {
    const sampled = [
      { patients: 10, catheters: 10 },
      { patients: 30, catheters: 0 },
    ];
    expect(weeklySample({ sampled, monthPatientDays: 400 }).catheterDays.value).toBe(100);
  });

  it.each([[[]], [[{ patients: 0, catheters: 0 }]]])(
    "is null with the reason when the sample holds no patients",
    (sampled) => {
      const result = weeklySample({ sampled, monthPatientDays: 100 });
      expect(result.catheterDays).toEqual({
        value: null,
        reason: "The sampled days hold no patients, so catheter-days cannot be estimated.",
      });
      expect(result.sampledUtilization.value).toBeNull();
    },
  );

  it("stops at counts that cannot be", () => {
    expect(() => weeklySample({ sampled: [{ patients: 1, catheters: 2 }], monthPatientDays: 30 })).toThrow("more than");
    expect(() => weeklySample({ sampled: [], monthPatientDays: 1.5 })).toThrow("monthPatientDays must be");
  });
});
