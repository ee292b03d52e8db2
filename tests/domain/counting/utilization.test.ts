import { describe, expect, it } from "vitest";
import { utilization } from "../../../src/domain/counting/utilization.ts";

describe("the device utilization ratio", () => {
  it("is catheter-days by patient-days, unrounded, and may use an estimate", () => {
    expect(utilization({ patientDays: 8, catheterDays: 3 })).toEqual({ value: 0.375 });
    expect(utilization({ patientDays: 4, catheterDays: 2.5 })).toEqual({ value: 0.625 });
  });

  it("is 0 when nobody has a catheter and 1 when everybody has", () => {
    expect(utilization({ patientDays: 31, catheterDays: 0 }).value).toBe(0);
    expect(utilization({ patientDays: 31, catheterDays: 31 }).value).toBe(1);
  });

  it("is null with the reason, never NaN, when there are no patient-days", () => {
    expect(utilization({ patientDays: 0, catheterDays: 0 })).toEqual({
      value: null,
      reason: "There are no patient-days, so there is no utilization ratio.",
    });
  });

  it("stops at amounts that cannot be", () => {
    expect(() => utilization({ patientDays: 5, catheterDays: 6 })).toThrow("6 catheter-days exceed 5 patient-days");
    expect(() => utilization({ patientDays: 0, catheterDays: 1 })).toThrow("exceed");
    expect(() => utilization({ patientDays: -1, catheterDays: 0 })).toThrow("patientDays must be");
    expect(() => utilization({ patientDays: 1, catheterDays: Number.NaN })).toThrow("catheterDays must be");
  });
});
