import { describe, expect, it } from "vitest";
import { daysOf } from "../../../src/domain/counting/day-stretch.ts";

describe("the days of stretches", () => {
  it("holds both ends and each day once, in whatever order the stretches come", () => {
    const days = daysOf([
      { first: 5, last: 7 },
      { first: -1, last: 0 },
      { first: 6, last: 8 },
    ]);
    expect([...days].sort((a, b) => a - b)).toEqual([-1, 0, 5, 6, 7, 8]);
  });

  it.each([
    { first: 3, last: 2 },
    { first: Number.NaN, last: 2 },
    { first: 1, last: Number.POSITIVE_INFINITY },
    { first: 1.5, last: 2.5 },
  ])("has no days for $first to $last and says so", (stretch) => {
    expect(() => daysOf([stretch])).toThrow("no stretch of days");
  });
});
