import { describe, expect, it } from "vitest";
import { pool } from "../../../src/domain/counting/pool.ts";
import { utilization } from "../../../src/domain/counting/utilization.ts";

describe("pooling", () => {
  it("sums the named amounts and nothing else", () => {
    const wards = [
      { ward: 1, patientDays: 10, catheterDays: 9 },
      { ward: 2, patientDays: 90, catheterDays: 1 },
    ];
    expect(pool(["patientDays", "catheterDays"], wards)).toEqual({ patientDays: 100, catheterDays: 10 });
  });

  it("gives a ratio of sums where a mean of ratios would be 0.456", () => {
    const wards = [
      { patientDays: 10, catheterDays: 9 },
      { patientDays: 90, catheterDays: 1 },
    ];
    expect(utilization(pool(["patientDays", "catheterDays"], wards)).value).toBe(0.1);
  });

  it("pools nothing to zeros", () => {
    expect(pool(["events"], [])).toEqual({ events: 0 });
  });

  it("stops at a part that has no number", () => {
    expect(() => pool(["events"], [{ events: 1 }, { events: Number.NaN }])).toThrow("events must be");
  });
});
