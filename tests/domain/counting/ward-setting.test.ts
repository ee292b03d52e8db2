import { describe, expect, it } from "vitest";
import { describedFrom, inForceOn, inpatientWards } from "../../../src/domain/counting/ward-setting.ts";

describe("what is in force on a day", () => {
  const list = [{ fromDay: 10 }, { fromDay: 20 }];

  it("is what began last, from its own day on", () => {
    expect([9, 10, 19, 20, 99].map((day) => inForceOn(list, day)?.fromDay)).toEqual([undefined, 10, 10, 20, 20]);
  });

  it("is nothing in an empty list", () => {
    expect(inForceOn([], 5)).toBe(undefined);
  });
});

describe("the first day of which anybody said what a ward is", () => {
  const named = { fromDay: 0, setting: null };
  it.each([
    ["nobody ever said it", [named], undefined],
    ["nothing is there at all", [], undefined],
    ["it was only named before", [named, { fromDay: 7, setting: "inpatient" as const }], 7],
    [
      "nobody knows any more",
      [
        { fromDay: 3, setting: "outpatient" as const },
        { fromDay: 7, setting: null },
      ],
      3,
    ],
  ])("when %s", (_, settings, expected) => {
    expect(describedFrom(settings)).toBe(expected);
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
