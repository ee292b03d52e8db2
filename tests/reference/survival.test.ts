import { describe, expect, it } from "vitest";
import { z } from "zod";
import { kaplanMeier, survivalAt } from "../../src/domain/statistics/kaplan-meier.ts";
import { restrictedMean } from "../../src/domain/statistics/restricted-mean.ts";
import { survivalLimits } from "../../src/domain/statistics/survival-limits.ts";
import { survivalQuantile } from "../../src/domain/statistics/survival-quantile.ts";
import { readRows } from "./read-data.ts";
import { expectSame, readStatistics } from "./read-statistics.ts";

const numbers = z.array(z.number());
const quantiles = z.object({
  ...{ q25: z.number().nullable(), median: z.number().nullable(), q75: z.number().nullable() },
  ...{ median_lower: z.number().nullable(), median_upper: z.number().nullable() },
});
const curve = z.object({
  ...{ name: z.string(), n: z.number(), events: z.number(), rmean: z.number(), at: numbers, surv: numbers },
  ...{ std_err: numbers, lower_log: numbers, upper_log: numbers, n_risk: numbers },
  ...{ log: quantiles, "log-log": quantiles, plain: quantiles },
});
const { sets } = readStatistics("kaplan-meier.json", z.object({ sets: z.array(curve).length(4) }));

// Times to infection of peritoneal and vascular catheters: KMsurv::kidney, and survival::kidney (McGilchrist and Aisbett).
const exitSite = readRows("statistics/km-exit-site.csv").map((row) => ({
  ...{ time: Number(row.time), isEvent: row.delta === "1", type: row.type },
}));
const recurrence = readRows("statistics/km-recurrence.csv").map((row) => ({
  ...{ time: Number(row.time), isEvent: row.status === "1", type: "" },
}));
const watched = [
  exitSite,
  exitSite.filter(({ type }) => type === "1"),
  exitSite.filter(({ type }) => type === "2"),
  recurrence,
];

describe("survival curves, survfit of the R package survival 3.5-3", () => {
  it.each(sets.map((set, at) => [set.name, set, watched[at] ?? []] as const))("%s, to 1e-9", (_name, set, times) => {
    expect([times.length, times.filter(({ isEvent }) => isEvent).length]).toEqual([set.n, set.events]);
    const steps = kaplanMeier(times);
    const limits = survivalLimits(steps, { level: 0.95, scale: "log" });
    for (const [i, time] of set.at.entries()) {
      const at = steps.findLastIndex((step) => step.time <= time);
      const step = steps[at];
      expect(step?.atRisk).toBe(set.n_risk[i]);
      expectSame(survivalAt(steps, time), set.surv[i] ?? Number.NaN);
      const error = (step?.survival ?? 0) * Math.sqrt(step?.logVariance ?? 0);
      expectSame(error, set.std_err[i] ?? Number.NaN);
      expectSame(limits[at]?.lower, set.lower_log[i] ?? Number.NaN);
      expectSame(limits[at]?.upper, set.upper_log[i] ?? Number.NaN);
    }
    expectSame(restrictedMean(steps), set.rmean);
  });

  it.each(sets.map((set, at) => [set.name, set, watched[at] ?? []] as const))(
    "%s: quartiles, and limits of the median on three scales",
    (_name, set, times) => {
      const steps = kaplanMeier(times);
      for (const scale of ["log", "log-log", "plain"] as const) {
        const of = (fraction: number) => survivalQuantile(steps, { fraction, level: 0.95, scale });
        expect({
          ...{ q25: of(0.25).time.value, median: of(0.5).time.value, q75: of(0.75).time.value },
          ...{ median_lower: of(0.5).lower.value, median_upper: of(0.5).upper.value },
        }).toEqual(set[scale]);
      }
    },
  );
});
