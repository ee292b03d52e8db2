import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clopperPearsonLimits } from "../../../src/domain/statistics/clopper-pearson-limits.ts";
import { compareRates } from "../../../src/domain/statistics/compare-rates.ts";
import { compareSirs } from "../../../src/domain/statistics/compare-sirs.ts";
import { compareUtilization } from "../../../src/domain/statistics/compare-utilization.ts";
import { shrinkRates } from "../../../src/domain/statistics/shrinkage.ts";
import { wilsonLimits } from "../../../src/domain/statistics/wilson-limits.ts";

const impossible = expect.objectContaining({ code: "figure-impossible" });
const side = fc.record({ events: fc.nat(60), days: fc.integer({ min: 1, max: 20_000 }) });

describe("two rates", () => {
  it("exchanged, the ratio and its limits are inverted and p stays", () => {
    fc.assert(
      fc.property(side, side, fc.constantFrom("mid-p" as const, "exact" as const), (first, second, by) => {
        fc.pre(first.events > 0 && second.events > 0);
        const [here, there] = [
          compareRates({ first, second, level: 0.95, by }),
          compareRates({ first: second, second: first, level: 0.95, by }),
        ];
        expect(Number(here.ratio.value) * Number(there.ratio.value)).toBeCloseTo(1, 10);
        expect(Number(here.lower.value) * Number(there.upper.value)).toBeCloseTo(1, 8);
        expect(here.p.value).toBeCloseTo(Number(there.p.value), 10);
        expect(Number(here.lower.value)).toBeLessThan(Number(here.ratio.value));
        expect(Number(here.upper.value)).toBeGreaterThan(Number(here.ratio.value));
      }),
    );
  });

  it("never give NaN or Infinity: what is missing has its reason", () => {
    const some = fc.record({ events: fc.nat(2), days: fc.nat(2) });
    fc.assert(
      fc.property(some, some, (first, second) => {
        const { ratio, lower, upper, p } = compareRates({ first, second, level: 0.95, by: "mid-p" });
        for (const figure of [ratio, lower, upper, p]) {
          if (figure.value === null) expect(figure.reason).toMatch(/\.$/);
          else expect(Number.isFinite(figure.value)).toBe(true);
        }
      }),
    );
  });

  it("are refused for figures that cannot be, and compare no SIR that is withheld", () => {
    const of = (events: number, days: number) => ({ events, days });
    for (const wrong of [of(-1, 5), of(1.5, 5), of(1, -5), of(1, Number.NaN)]) {
      expect(() => compareRates({ first: of(1, 5), second: wrong, level: 0.95, by: "exact" })).toThrow(impossible);
    }
    const second = { observed: 3, predicted: 0.9 };
    const found = compareSirs({ first: { observed: 3, predicted: 2 }, second, level: 0.95, by: "mid-p" });
    expect(found.p).toEqual({ value: null, reason: expect.stringContaining("withheld") });
    expect(() => compareSirs({ first: { observed: 0.1, predicted: 2 }, second, level: 0.95, by: "exact" })).toThrow(
      impossible,
    );
  });
});

describe("two utilization ratios", () => {
  it("without patient-days, or estimated, have a reason; impossible ones are refused", () => {
    const second = { catheterDays: 10, patientDays: 40 };
    const of = (catheterDays: number, patientDays: number) =>
      compareUtilization({ first: { catheterDays, patientDays }, second, level: 0.95 });
    expect(of(0, 0).p).toEqual({ value: null, reason: expect.stringContaining("nothing to take a part of") });
    expect(of(10.5, 40).p).toEqual({ value: null, reason: expect.stringContaining("an estimate") });
    expect(of(0, 40)).toMatchObject({ ratio: { value: 0 }, lower: { value: null }, p: { value: expect.any(Number) } });
    expect(() => of(41, 40)).toThrow(impossible);
    expect(() => of(-1, 40)).toThrow(impossible);
  });
});

describe("limits of a proportion", () => {
  it("bracket it, lie from 0 to 1 and widen with the level; the exact ones are no narrower in the middle", () => {
    const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(fc.nat(400), fc.nat(400), level, (a, b, one) => {
        fc.pre(a + b > 0);
        for (const limits of [wilsonLimits, clopperPearsonLimits]) {
          const at = (of: number) => limits({ part: a, whole: a + b, level: of });
          const { lower, upper } = at(one);
          expect(lower.value).toBeGreaterThanOrEqual(0);
          expect(Number(lower.value)).toBeLessThanOrEqual(a / (a + b) + 1e-15);
          expect(Number(upper.value)).toBeGreaterThanOrEqual(a / (a + b) - 1e-15);
          expect(upper.value).toBeLessThanOrEqual(1);
          expect(Number(at(0.9995).upper.value)).toBeGreaterThanOrEqual(Number(upper.value));
          expect(Number(at(0.9995).lower.value)).toBeLessThanOrEqual(Number(lower.value));
        }
      }),
    );
  });
});

describe("shrunken rates", () => {
  const wards = fc.array(fc.record({ events: fc.nat(30), days: fc.nat(5_000) }), { minLength: 1, maxLength: 15 });

  it("lie between the ward and the pool, inside their interval", () => {
    fc.assert(
      fc.property(wards, (counts) => {
        const found = shrinkRates(counts, { level: 0.95 });
        if ("value" in found) {
          expect(found.reason).toMatch(/\.$/);
          return;
        }
        for (const [at, { rate, lower, upper, ownWeight }] of found.wards.entries()) {
          const { events = 0, days = 0 } = counts[at] ?? {};
          const own = days === 0 ? found.pooled : events / days;
          // A ward without days but with events (which cannot be told a rate) stays with the pool's side.
          if (days > 0 || events === 0) {
            expect(rate).toBeGreaterThanOrEqual(Math.min(own, found.pooled) * (1 - 1e-9));
            expect(rate).toBeLessThanOrEqual(Math.max(own, found.pooled) * (1 + 1e-9));
          }
          expect(lower).toBeLessThan(rate);
          expect(Number.isFinite(upper)).toBe(true);
          // A gamma distribution of a small shape is so skewed that its mean can lie beyond any quantile.
          const shape = ownWeight === 0 ? 1 : (rate * days) / ownWeight;
          if (shape > 0.5) expect(upper).toBeGreaterThan(rate);
          expect(ownWeight).toBeGreaterThanOrEqual(0);
          expect(ownWeight).toBeLessThan(1);
        }
      }),
    );
  });

  it("stay finite where one ward differs beyond all measure", () => {
    const found = shrinkRates(
      [
        { events: 1, days: 1 },
        { events: 0, days: 50_000 },
      ],
      { level: 0.95 },
    );
    expect("value" in found ? found.reason : found.wards[1]?.lower).toBe(0);
  });

  it("are not given without days or events; impossible figures are refused", () => {
    const level = { level: 0.95 };
    expect(shrinkRates([], level)).toEqual({ value: null, reason: expect.stringContaining("no days") });
    expect(shrinkRates([{ events: 0, days: 9 }], level)).toEqual({
      value: null,
      reason: expect.stringContaining("no events"),
    });
    expect(() => shrinkRates([{ events: 0.5, days: 9 }], level)).toThrow(impossible);
    expect(() => shrinkRates([{ events: 1, days: -9 }], level)).toThrow(impossible);
  });
});
