import { describe, expect, it } from "vitest";
import { gapsBetween } from "../../../src/domain/comparison/gaps-between.ts";

describe("catheter-days between infections", () => {
  const days = [10, 10, 10, 10].map((catheterDays, n) => ({ day: n, catheterDays }));

  it("are counted by hand", () => {
    // 10 up to day 0, 40 up to day 3: 29 passed before the one on which the second fell. Two on one day have none between.
    expect(gapsBetween([{ days, infectionDays: [0, 3] }])).toEqual({ gaps: [29], since: 0 });
    expect(gapsBetween([{ days, infectionDays: [1, 1] }])).toEqual({ gaps: [0], since: 20 });
    expect(gapsBetween([{ days, infectionDays: [] }])).toEqual({ gaps: [], since: null });
  });

  it("of several wards are taken together", () => {
    const together = gapsBetween([
      { days, infectionDays: [0] },
      { days, infectionDays: [3] },
    ]);
    expect(together).toEqual({ gaps: [59], since: 0 });
  });
});
