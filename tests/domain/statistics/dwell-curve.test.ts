import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Dwell, dwellCurve } from "../../../src/domain/statistics/dwell-curve.ts";
import { kaplanMeier, survivalAt } from "../../../src/domain/statistics/kaplan-meier.ts";
import { restrictedMean } from "../../../src/domain/statistics/restricted-mean.ts";
import { type SurvivalScale, survivalLimits } from "../../../src/domain/statistics/survival-limits.ts";
import { survivalQuantile } from "../../../src/domain/statistics/survival-quantile.ts";

const times = fc.array(fc.record({ time: fc.nat(40), isEvent: fc.boolean() }), { maxLength: 60 });

describe("dwell curve", () => {
  it("counts removals as events; catheters in place, deaths and discharges are censored", () => {
    const dwells: Dwell[] = [
      { days: 2, end: "removed" },
      { days: 3, end: "died" },
      { days: 3, end: "removed" },
      { days: 5, end: "discharged" },
      { days: 9, end: "in-place" },
    ];
    const { steps, median, removed, censored } = dwellCurve(dwells);
    // By hand: 4/5 after day 2, times 3/4 after day 3; nobody was seen to be rid of it later.
    expect(
      steps.map(({ time, atRisk, events, survival }) => [time, atRisk, events, Number(survival.toFixed(12))]),
    ).toEqual([
      [2, 5, 1, 0.8],
      [3, 4, 1, 0.6],
      [5, 2, 0, 0.6],
      [9, 1, 0, 0.6],
    ]);
    expect([removed, censored]).toEqual([2, 3]);
    expect(median.time).toEqual({
      value: null,
      reason: "The curve does not fall so far: too many are still in place.",
    });
  });

  it("of no catheters has no steps and no median", () => {
    const { steps, median } = dwellCurve([]);
    expect([steps, median.time.value, restrictedMean(steps), survivalAt(steps, 4)]).toEqual([[], null, 0, 1]);
  });

  it("refuses a negative time", () => {
    expect(() => kaplanMeier([{ time: -1, isEvent: true }])).toThrow("time must be a number of zero or more, not -1");
  });
});

describe("survival curve", () => {
  it("never rises, stays from 0 to 1, and without censoring is the share that lasts longer", () => {
    fc.assert(
      fc.property(times, (watched) => {
        let before = 1;
        for (const { survival, atRisk } of kaplanMeier(watched)) {
          expect(survival).toBeLessThanOrEqual(before);
          expect(survival).toBeGreaterThanOrEqual(0);
          expect(atRisk).toBeGreaterThan(0);
          before = survival;
        }
        for (const { time, survival } of kaplanMeier(watched.map(({ time }) => ({ time, isEvent: true })))) {
          expect(survival).toBeCloseTo(watched.filter((one) => one.time > time).length / watched.length, 12);
        }
      }),
    );
  });

  it.each<SurvivalScale>(["log-log", "log", "plain"])("limits bracket it from 0 to 1: %s", (scale) => {
    fc.assert(
      fc.property(times, (watched) => {
        const steps = kaplanMeier(watched);
        const narrow = survivalLimits(steps, { level: 0.8, scale });
        for (const [at, limit] of survivalLimits(steps, { level: 0.95, scale }).entries()) {
          const survival = steps[at]?.survival ?? Number.NaN;
          if (limit === null) {
            expect(survival).toBe(0);
            continue;
          }
          expect(limit.lower).toBeGreaterThanOrEqual(0);
          expect(limit.lower).toBeLessThanOrEqual(Math.min(survival, narrow[at]?.lower ?? 1));
          expect(limit.upper).toBeGreaterThanOrEqual(Math.max(survival, narrow[at]?.upper ?? 0));
          expect(limit.upper).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it("a curve that meets one half exactly has its median between that event and the next", () => {
    const steps = kaplanMeier([2, 4, 8, 20].map((time) => ({ time, isEvent: true })));
    expect(survivalQuantile(steps, { fraction: 0.5, level: 0.95, scale: "log-log" }).time.value).toBe(6);
  });
});
