import { describe, expect, it } from "vitest";
import { inForceOn, inpatientWards } from "../../../src/domain/counting/ward-setting.ts";

describe("what is in force on a day", () => {
  const list = [{ fromDay: 10 }, { fromDay: 20 }];

  it("is what began last, from its own day on", () => {
    expect([9, 10, 19, 20, 99].map((day) => inForceOn(list, day)?.fromDay)).toEqual([undefined, 10, 10, 20, 20]);
  });

  it("is nothing in an empty list", () => {
    expect(inForceOn([], 5)).toBe(undefined);
  });
});

describe("a ward earns patient-days", () => {
  const wards = new Map([
    [1, [{ fromDay: 0, setting: "inpatient" as const }]],
    [
      2,
      [
        { fromDay: 10, setting: "outpatient" as const },
        { fromDay: 20, setting: "inpatient" as const },
        { fromDay: 30, setting: null },
      ],
    ],
    [3, [{ fromDay: 0, setting: "procedure" as const }]],
  ]);
  const isInpatient = inpatientWards(wards);

  it("while it is an inpatient ward", () => {
    expect([9, 10, 20, 29, 30].map((day) => isInpatient(2, day))).toEqual([false, false, true, true, false]);
    expect(isInpatient(1, 5)).toBe(true);
    expect(isInpatient(3, 5)).toBe(false);
  });

  it("never before anybody described it, nor when it is not known at all", () => {
    expect(isInpatient(1, -1)).toBe(false);
    expect(isInpatient(4, 5)).toBe(false);
  });
});
