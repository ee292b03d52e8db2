import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LimitChoice, poissonLimits } from "../../../src/domain/statistics/poisson-limits.ts";

const methods = ["exact", "mid-p", "byar"] as const;
const levels = fc.double({ min: 0.5, max: 0.9999, noNaN: true });
const counts = fc.oneof(fc.nat(20), fc.nat(300), fc.nat(50_000));

describe("limits of a Poisson count", () => {
  it.each(["exact", "mid-p"] as const)("bracket the estimate, in order and finite: %s", (by) => {
    fc.assert(
      fc.property(counts, levels, (observed, level) => {
        const { lower, upper } = poissonLimits({ observed, level, by });
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(lower).toBeLessThanOrEqual(observed);
        expect(upper).toBeGreaterThan(observed);
        expect(Number.isFinite(upper)).toBe(true);
      }),
    );
  });

  it.each(methods)("widen with the level: %s", (by) => {
    fc.assert(
      fc.property(counts, levels, levels, (observed, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const narrow = poissonLimits({ observed, level: Math.min(a, b), by });
        const wide = poissonLimits({ observed, level: Math.max(a, b), by });
        expect(wide.upper).toBeGreaterThan(narrow.upper);
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower);
        if (narrow.lower > 0 && by !== "byar") expect(wide.lower).toBeLessThan(narrow.lower);
      }),
    );
  });

  it.each(methods)("rise with the count: %s", (by) => {
    fc.assert(
      fc.property(counts, levels, (observed, level) => {
        const [here, next] = [observed, observed + 1].map((count) => poissonLimits({ observed: count, level, by }));
        expect(next?.upper).toBeGreaterThan(here?.upper ?? Number.NaN);
        expect(next?.lower).toBeGreaterThanOrEqual(here?.lower ?? Number.NaN);
      }),
    );
  });

  it("exact limits hold the mid-P limits", () => {
    fc.assert(
      fc.property(counts, levels, (observed, level) => {
        const [exact, midP] = (["exact", "mid-p"] as const).map((by) => poissonLimits({ observed, level, by }));
        expect(exact?.lower).toBeLessThanOrEqual(midP?.lower ?? Number.NaN);
        expect(exact?.upper).toBeGreaterThan(midP?.upper ?? Number.NaN);
      }),
    );
  });

  it.each([
    ["mid-p", 101, "mid-p"],
    ["mid-p", 10_000_000, "mid-p"],
    ["mid-p-to-100", 0, "mid-p"],
    ["mid-p-to-100", 100, "mid-p"],
    ["mid-p-to-100", 101, "byar"],
    ["exact-to-14", 14, "exact"],
    ["exact-to-14", 15, "byar"],
    ["exact", 5_000, "exact"],
  ] as const)("the rule %s takes for %i observed the method %s", (by, observed, method) => {
    expect(poissonLimits({ observed, level: 0.95, by }).method).toBe(method);
  });

  it("at 0.999999, the widest level, the limits are finite and Byar's lower one is cut at 0", () => {
    expect(poissonLimits({ observed: 1, level: 0.999999, by: "byar" }).lower).toBe(0);
    expect(poissonLimits({ observed: 1, level: 0.999999, by: "exact" }).upper).toBeLessThan(30);
  });
});

describe("what cannot be is refused by name", () => {
  const choices: LimitChoice[] = ["exact", "mid-p", "byar", "mid-p-to-100", "exact-to-14"];
  it.each(
    choices.flatMap((by) => [-1, 2.5, Number.NaN, Number.POSITIVE_INFINITY].map((count) => [by, count] as const)),
  )("%s of %d observed", (by, observed) => {
    const refused = { code: "figure-impossible", faults: [expect.objectContaining({ pointer: "/observed" })] };
    expect(() => poissonLimits({ observed, level: 0.95, by })).toThrow(expect.objectContaining(refused));
  });

  it.each([0, 1, 0.4999, 95, Number.NaN])("a level of %d", (level) => {
    const refused = { code: "level-impossible", faults: [expect.objectContaining({ pointer: "/level" })] };
    expect(() => poissonLimits({ observed: 3, level, by: "mid-p" })).toThrow(expect.objectContaining(refused));
  });
});
