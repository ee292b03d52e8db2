import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cad } from "../../../src/domain/statistics/cad.ts";
import { pooledSir } from "../../../src/domain/statistics/pooled-sir.ts";
import { populationSir } from "../../../src/domain/statistics/population-sir.ts";
import { rateWithLimits } from "../../../src/domain/statistics/rate-with-limits.ts";
import { sir } from "../../../src/domain/statistics/sir.ts";
import { sirAgainstTarget } from "../../../src/domain/statistics/sir-against-target.ts";
import { sur } from "../../../src/domain/statistics/sur.ts";

const rule = { level: 0.95, by: "mid-p" } as const;
const impossible = (pointer: string) =>
  expect.objectContaining({ code: "figure-impossible", faults: [expect.objectContaining({ pointer })] });

describe("SIR", () => {
  it.each([0, 0.5, 0.999_999])("is withheld with the reason when %d are predicted", (predicted) => {
    const found = sir({ observed: 2, predicted, ...rule });
    const withheld = { value: null, reason: "Fewer than 1.0 infections are predicted, so the SIR is withheld." };
    expect(found).toMatchObject({ ratio: withheld, lower: withheld, upper: withheld, p: withheld, method: null });
  });

  it("has no lower limit where nothing was observed, and says so", () => {
    const { ratio, lower } = sir({ observed: 0, predicted: 3, ...rule });
    expect(ratio.value).toBe(0);
    expect(lower).toEqual({ value: null, reason: "No infections are observed, so the SIR has no lower limit." });
  });

  it("lies between its limits; p and limits agree on 1 where both are mid-P", () => {
    const inputs = [fc.nat(100), fc.double({ min: 1, max: 200, noNaN: true })] as const;
    fc.assert(
      fc.property(...inputs, (observed, predicted) => {
        const { ratio, lower, upper, p } = sir({ observed, predicted, ...rule });
        expect(ratio.value).toBe(observed / predicted);
        expect(lower.value ?? 0).toBeLessThanOrEqual(ratio.value ?? Number.NaN);
        expect(upper.value).toBeGreaterThan(ratio.value ?? Number.NaN);
        expect(p.value).toBeGreaterThan(0);
        expect(p.value).toBeLessThanOrEqual(1);
        const outside = (lower.value ?? 0) > 1 || Number(upper.value) < 1;
        if (Math.abs((p.value ?? 0) - 0.05) > 1e-9) expect(outside).toBe((p.value ?? 0) < 0.05);
      }),
    );
  });

  it("is refused for counts and predicted numbers that cannot be", () => {
    expect(() => sir({ observed: 1.5, predicted: 3, ...rule })).toThrow(impossible("/observed"));
    expect(() => sir({ observed: -1, predicted: 3, ...rule })).toThrow(impossible("/observed"));
    expect(() => sir({ observed: 1, predicted: -3, ...rule })).toThrow(impossible("/predicted"));
    expect(() => sir({ observed: 1, predicted: Number.NaN, ...rule })).toThrow(impossible("/predicted"));
    expect(() => sirAgainstTarget({ observed: 1, predicted: 3, target: 0, ...rule })).toThrow(impossible("/target"));
  });

  it("against a target of 1 is the SIR itself; a low target can leave it withheld", () => {
    expect(sirAgainstTarget({ observed: 4, predicted: 3.3, target: 1, ...rule })).toEqual(
      sir({ observed: 4, predicted: 3.3, ...rule }),
    );
    expect(sirAgainstTarget({ observed: 4, predicted: 1.2, target: 0.8, ...rule }).ratio.value).toBeNull();
  });

  it("of several wards is the ratio of their sums, withheld parts included", () => {
    const parts = [
      { observed: 3, predicted: 0.6 },
      { observed: 0, predicted: 2.4 },
    ];
    expect(pooledSir(parts, rule)).toEqual(sir({ observed: 3, predicted: 3, ...rule }));
    expect(pooledSir([], rule).ratio.value).toBeNull();
    expect(() => pooledSir([{ observed: 0.5, predicted: 1 }], rule)).toThrow(impossible("/observed"));
  });
});

describe("SUR", () => {
  it("of estimated catheter-days is a ratio without limits, with the reason", () => {
    const { ratio, upper, p, method } = sur({ observed: 212.12, predicted: 250, ...rule });
    expect(ratio.value).toBe(212.12 / 250);
    expect(upper).toEqual({ value: null, reason: expect.stringContaining("an estimate") });
    expect([p.value, method]).toEqual([null, null]);
  });

  it("is withheld below one predicted catheter-day", () => {
    expect(sur({ observed: 3, predicted: 0.2, ...rule }).ratio).toEqual({
      value: null,
      reason: "Fewer than 1.0 catheter-days are predicted, so the SUR is withheld.",
    });
  });
});

describe("population SIR", () => {
  it("is SIR x SUR where the SUR is the same in every stratum, and not otherwise", () => {
    const observed = 20;
    const of = (wards: { days: number; predictedDays: number; each: number }[]) => {
      const predicted = wards.reduce((sum, { days, each }) => sum + days * each, 0);
      const days = wards.reduce((sum, ward) => sum + ward.days, 0);
      const predictedDays = wards.reduce((sum, ward) => sum + ward.predictedDays, 0);
      const strata = wards.map((w) => ({ predictedCatheterDays: w.predictedDays, predictedPerCatheterDay: w.each }));
      return [
        populationSir({ observed, strata, ...rule }).ratio.value,
        (observed / predicted) * (days / predictedDays),
      ];
    };
    const [same, product] = of([
      { days: 900, predictedDays: 1_000, each: 0.01 },
      { days: 1_800, predictedDays: 2_000, each: 0.002 },
    ]);
    expect(same).toBeCloseTo(product ?? Number.NaN, 12);
    const [other, otherProduct] = of([
      { days: 500, predictedDays: 1_000, each: 0.01 },
      { days: 2_200, predictedDays: 2_000, each: 0.002 },
    ]);
    expect(other).not.toBeCloseTo(otherProduct ?? Number.NaN, 2);
    expect(() =>
      populationSir({ observed, strata: [{ predictedCatheterDays: -1, predictedPerCatheterDay: 1 }], ...rule }),
    ).toThrow(impossible("/predictedCatheterDays"));
  });
});

describe("CAD", () => {
  it("adds strata, is negative where the goal is beaten, and 0 without strata", () => {
    expect(cad([{ observed: 8, predicted: 10, goal: 1 }])).toBe(-2);
    expect(cad([])).toBe(0);
    expect(() => cad([{ observed: 8, predicted: 10, goal: 0 }])).toThrow(impossible("/goal"));
    expect(() => cad([{ observed: -8, predicted: 10, goal: 1 }])).toThrow(impossible("/observed"));
  });
});

describe("rate with limits", () => {
  it("has none, with the reason, where there are no days, even with events", () => {
    const none = { value: null, reason: "There are no days, so there is no rate." };
    expect(rateWithLimits({ events: 2, days: 0, per: 1_000, ...rule })).toMatchObject({
      rate: none,
      upper: none,
      method: null,
    });
  });

  it("is refused for figures that cannot be", () => {
    const rate = (events: number, days: number) => () => rateWithLimits({ events, days, per: 1_000, ...rule });
    expect(rate(-1, 10)).toThrow(impossible("/events"));
    expect(rate(0.5, 10)).toThrow(impossible("/events"));
    expect(rate(1, -10)).toThrow(impossible("/days"));
    expect(rate(1, Number.POSITIVE_INFINITY)).toThrow(impossible("/days"));
  });
});
