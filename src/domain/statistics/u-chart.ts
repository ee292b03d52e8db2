import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount, refuseUnlessCount, refuseUnlessPositive } from "./check-figures.ts";
import { exactFunnelLimit } from "./funnel-limits.ts";
import { normalAbove } from "./normal.ts";

/** One period of a u chart: events and the days over which they were counted. */
export interface ChartPeriod {
  readonly events: number;
  readonly days: number;
}

/** A period's rate per day with its limits; all null where there are no days. */
export interface UChartPoint {
  readonly rate: Ratio;
  /** Center minus and plus so many standard errors; the lower one never below 0. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Exact limits of whole counts, beyond which no more than the same probability is left on either side. */
  readonly exactLower: number | null;
  readonly exactUpper: number | null;
}

/** A u chart: rates per day around the pooled rate. */
export interface UChart {
  /** All events / all days. */
  readonly center: Ratio;
  readonly points: readonly UChartPoint[];
}

/**
 * A u chart of events per day: center line, limits at `sigmas` standard errors, and exact Poisson limits that leave
 * outside no more than a normal variable leaves beyond as many standard errors (0.00135 on either side for 3). They are
 * limits of whole counts: interpolated ones, as funnels have, would call a count of 2 outside where 0.17 are expected,
 * which chance makes in one month of 79.
 * Special cases: a period without days has no rate and no limits; no days at all, no center, with the reason; no events
 * at all, limits of 0. A Problem for figures that cannot be.
 * Source: limits of standard errors as in qcc 2.7 and Montgomery, Introduction to Statistical Quality Control (from
 * memory); exact limits: Spiegelhalter, Stat Med 2005;24:1185-1202, appendix. Error: below 1e-12, relative.
 */
export function uChart({ periods, sigmas }: { periods: readonly ChartPeriod[]; sigmas: number }): UChart {
  refuseUnlessPositive("sigmas", sigmas);
  let [events, days] = [0, 0];
  for (const period of periods) {
    refuseUnlessCount("events", period.events);
    refuseUnlessAmount("days", period.days);
    events += period.events;
    days += period.days;
  }
  if (days === 0) {
    const center = { value: null, reason: "There are no days, so there is no rate." };
    return { center, points: periods.map(() => withoutDays) };
  }
  const center = events / days;
  return { center: { value: center }, points: periods.map((period) => pointOf(period, center, sigmas)) };
}

const withoutDays: UChartPoint = {
  rate: { value: null, reason: "There are no days in this period, so there is no rate." },
  ...{ lower: null, upper: null, exactLower: null, exactUpper: null },
};

function pointOf({ events, days }: ChartPeriod, center: number, sigmas: number): UChartPoint {
  if (days === 0) return withoutDays;
  const rate = { value: events / days };
  if (center === 0) return { rate, lower: 0, upper: 0, exactLower: 0, exactUpper: 0 };
  const reach = sigmas * Math.sqrt(center / days);
  const tail = normalAbove(sigmas);
  const exact = (probability: number) => exactFunnelLimit({ target: center, denominator: days, probability }).discrete;
  return {
    ...{ rate, lower: Math.max(0, center - reach), upper: center + reach },
    ...{ exactLower: exact(tail), exactUpper: exact(1 - tail) },
  };
}
