import { describe, expect, it } from "vitest";
import { z } from "zod";
import { exactFunnelLimit, normalFunnelLimit } from "../../src/domain/statistics/funnel-limits.ts";
import { gChart } from "../../src/domain/statistics/g-chart.ts";
import { laneyUChart } from "../../src/domain/statistics/laney-u-chart.ts";
import { overdispersedLimit, overdispersion } from "../../src/domain/statistics/overdispersion.ts";
import { tChart } from "../../src/domain/statistics/t-chart.ts";
import { uChart } from "../../src/domain/statistics/u-chart.ts";
import { expectSame, figureOf, readStatistics } from "./read-statistics.ts";

const numbers = z.array(z.number());

function expectAll(ours: readonly (number | null | undefined)[], theirs: readonly number[], within?: number): void {
  expect(ours).toHaveLength(theirs.length);
  for (const [at, value] of theirs.entries()) expectSame(ours[at], value, within);
}

describe("u charts, R packages qcc 2.7 and qicharts2 0.8.1", () => {
  const limits = z.object({ lcl: numbers, ucl: numbers });
  const chart = limits.extend({
    ...{ name: z.string(), counts: numbers, days: numbers, centre: z.number() },
    qicharts2_per1000: limits.extend({ cl: z.number(), lcl95: numbers, ucl95: numbers }),
    laney_uprime_per1000: limits,
  });
  const { charts } = readStatistics("u-chart.json", z.object({ charts: z.array(chart).length(4) }));

  it.each(charts)("$name: center, limits of 2 and 3 sigmas, Laney's limits, to 1e-9", (one) => {
    const periods = one.counts.map((events, at) => ({ events, days: one.days[at] ?? 0 }));
    const three = uChart({ periods, sigmas: 3 });
    const two = uChart({ periods, sigmas: 2 });
    const laney = laneyUChart({ periods, sigmas: 3, movingRanges: "all" });
    const thousand = (value: number | null) => (value === null ? null : value * 1_000);
    expectSame(figureOf(three.center), one.centre);
    expectAll(
      three.points.map(({ lower }) => lower),
      one.lcl,
    );
    expectAll(
      three.points.map(({ upper }) => upper),
      one.ucl,
    );
    expectAll(
      three.points.map(({ lower }) => thousand(lower)),
      one.qicharts2_per1000.lcl,
    );
    // What that package calls 95% limits are two standard errors.
    expectAll(
      two.points.map(({ lower }) => thousand(lower)),
      one.qicharts2_per1000.lcl95,
    );
    expectAll(
      two.points.map(({ upper }) => thousand(upper)),
      one.qicharts2_per1000.ucl95,
    );
    expectAll(
      laney.limits.map(({ lower }) => thousand(lower)),
      one.laney_uprime_per1000.lcl,
    );
    expectAll(
      laney.limits.map(({ upper }) => thousand(upper)),
      one.laney_uprime_per1000.ucl,
    );
  });
});

describe("g and t charts, qicharts2 0.8.1 and the geometric distribution from zero", () => {
  // The figures of qcc 2.7 are left out: its p = 1 / mean does not belong to a count of the days between.
  const chart = z.object({
    ...{ name: z.string(), y: numbers, mean: z.number() },
    qicharts2_g: z.object({ cl_median: z.number(), ucl: z.number(), ucl95: z.number() }),
    benneyan_geometric_from0: z.object({
      ...{ p: z.number(), ucl3sigma: z.number(), q00135: z.number(), q50: z.number(), q99865: z.number() },
    }),
    qicharts2_t: z.object({ cl: z.number(), lcl: z.number(), ucl: z.number() }).nullable(),
  });
  const { charts } = readStatistics("g-chart.json", z.object({ charts: z.array(chart).length(2) }));

  it.each(charts)("$name", ({ y, mean, qicharts2_g: package2, benneyan_geometric_from0: geometric, qicharts2_t }) => {
    const found = gChart(y);
    if ("value" in found) throw new Error(found.reason);
    expectAll(
      [found.mean, found.probability, found.median, found.upperThreeSigma, found.upperThreeSigma],
      [mean, geometric.p, package2.cl_median, package2.ucl, geometric.ucl3sigma],
    );
    expectSame(found.mean + 2 * found.standardDeviation, package2.ucl95);
    expect([found.lower, found.middle, found.upper]).toEqual([geometric.q00135, geometric.q50, geometric.q99865]);
    const times = tChart(y);
    if (qicharts2_t === null) {
      expect(times).toEqual({ value: null, reason: expect.stringContaining("fell together") });
      return;
    }
    if ("value" in times) throw new Error(times.reason);
    expectAll([times.center, times.lower, times.upper], [qicharts2_t.cl, qicharts2_t.lcl, qicharts2_t.ucl]);
  });
});

describe("funnels: Spiegelhalter 2005, from R packages and recomputed in Python", () => {
  const exact = z.object({ discrete: numbers, interpolated: numbers });
  const models = z.object({ mult: numbers, add: numbers });
  const spread = z.object({
    ...{ z: numbers, z_winsorised: numbers, phi_unwinsorised: z.number(), phi: z.number(), tau2: z.number() },
    ...{ phi_significant_threshold: z.number(), l998: models, l95: models, u95: models, u998: models },
  });
  const funnel = z.object({
    ...{ name: z.string(), target: z.number(), observed: numbers, denominator: numbers },
    exact_poisson: z.object({ p001: exact, p025: exact, p975: exact, p999: exact }),
    normal: z.object({ l998: numbers, l95: numbers, u95: numbers, u998: numbers }),
    ...{ od_untransformed: spread, od_sqrt: spread },
  });
  const { funnels } = readStatistics("funnel.json", z.object({ funnels: z.array(funnel).length(2) }));
  const exactLevels = { p001: 0.001, p025: 0.025, p975: 0.975, p999: 0.999 };
  const levels = { l998: 0.001, l95: 0.025, u95: 0.975, u998: 0.999 };
  const entries = <K extends string>(record: Record<K, number>) => Object.entries(record) as [K, number][];

  it.each(funnels)("$name: exact limits at four probabilities, to 1e-9", ({ target, denominator, exact_poisson }) => {
    for (const [key, probability] of entries(exactLevels)) {
      const found = denominator.map((one) => exactFunnelLimit({ target, denominator: one, probability }));
      expectAll(
        found.map(({ discrete }) => discrete),
        exact_poisson[key].discrete,
      );
      expectAll(
        found.map(({ interpolated }) => interpolated),
        exact_poisson[key].interpolated,
      );
    }
  });

  it.each(funnels)("$name: normal and overdispersed limits, to 1e-9", ({ target, denominator, observed, ...one }) => {
    const units = observed.map((count, at) => ({ observed: count, denominator: denominator[at] ?? 0 }));
    for (const [scale, theirs] of [
      ["none", one.od_untransformed],
      ["square root", one.od_sqrt],
    ] as const) {
      const found = overdispersion({ units, target, scale });
      if ("value" in found) throw new Error(found.reason);
      expectAll(found.z, theirs.z);
      expectAll(found.winsorized, theirs.z_winsorised);
      expectAll(
        [found.phi, found.phiOfAll, found.phiThreshold, found.tauSquared],
        [theirs.phi, theirs.phi_unwinsorised, theirs.phi_significant_threshold, theirs.tau2],
      );
      for (const [key, probability] of entries(levels)) {
        const at = (model: "multiplicative" | "additive") =>
          denominator.map((of) => overdispersedLimit({ target, denominator: of, probability, scale, found, model }));
        expectAll(
          denominator.map((of) => normalFunnelLimit({ target, denominator: of, probability })),
          one.normal[key],
        );
        expectAll(at("multiplicative"), theirs[key].mult);
        expectAll(at("additive"), theirs[key].add);
      }
    }
  });
});
