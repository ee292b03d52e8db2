import { describe, expect, it } from "vitest";
import { drawHospital } from "../../src/demo/hospital.ts";
import { dayNumber } from "../../src/domain/days/day-number.ts";
import { hospitalAt, midnight, noon, zone } from "./drawn.ts";

describe("the drawn hospital", () => {
  it("comes out the same for the same seed and instant, and otherwise not", () => {
    const options = { seed: 1, zone, now: noon, days: 60 };
    const one = drawHospital(options);
    expect(drawHospital(options)).toEqual(one);
    expect(drawHospital({ ...options, seed: 2 })).not.toEqual(one);
    expect(drawHospital({ ...options, now: noon + 3_600_000 })).not.toEqual(one);
  });

  it("counts 3E by hand on every day of last month, near to what was so, and not always right", () => {
    const { courses, counts } = hospitalAt(noon);
    const october = Array.from({ length: 31 }, (_, i) => dayNumber("2026-10-01" as never) + i);
    expect(counts.map(({ ward, day }) => [ward, day])).toEqual(october.map((day) => ["3E", day]));
    const off = counts.map(({ day, patients }) => {
      const at = midnight(day);
      const there = courses.filter(({ legs }) =>
        legs.some(({ ward, from, to }) => ward.code === "3E" && from <= at && at < to),
      );
      return patients - there.length;
    });
    // Whoever was away for a procedure counts with the ward: a bed is held.
    expect(off.every((difference) => difference >= 0 && difference <= 2)).toBe(true);
    expect(counts.every(({ patients, catheters }) => catheters <= patients)).toBe(true);
    expect(counts.some(({ catheters }) => catheters > 0)).toBe(true);
  });
});
