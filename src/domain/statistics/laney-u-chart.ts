import type { ChartPeriod } from "./u-chart.ts";
import { uChart } from "./u-chart.ts";

/** The limits of one period on a u' chart; null where it has no days. */
export interface LaneyLimits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * Which moving ranges make the spread. `all`: each of them (Laney, Quality Engineering 2002;14:531-537; the u' chart of
 * qicharts2 0.8.1). `screened`: those of 3.267 times their mean or more are left out once and the mean is taken again, so
 * that one outlying month does not widen the limits that are to show it (Nelson, J Qual Technol 1982;14:172-173, from
 * memory; the individuals chart of qicharts2 0.8.1). The code of that package was read for both.
 */
export type MovingRanges = "all" | "screened";

/** A u' chart's spread and limits. */
export interface LaneyChart {
  readonly spread: number | null;
  /** How many moving ranges were left out as outlying. */
  readonly leftOut: number;
  readonly limits: readonly LaneyLimits[];
}

/** The upper limit of a range of two values, over their mean range: D4 of control charts (from memory). */
const outlying = 3.267;

/**
 * Laney's u' chart: the standard errors of a u chart multiplied by the spread of the rates from one period to the next
 * (mean moving range of their z scores / 1.128), for series whose rates differ by more than chance.
 * `spread` is null, with limits as on a u chart without it, where fewer than two periods have days or no events exist.
 * A Problem for figures that cannot be.
 * Source: {@link MovingRanges}. Error: below 1e-12, relative.
 */
export function laneyUChart(input: {
  periods: readonly ChartPeriod[];
  sigmas: number;
  movingRanges: MovingRanges;
}): LaneyChart {
  const { center, points } = uChart(input);
  const mean = center.value ?? 0;
  const errors = input.periods.map(({ days }) => (days === 0 ? null : Math.sqrt(mean / days)));
  const z = points.flatMap(({ rate }, at) => {
    const error = errors[at] ?? 0;
    return rate.value === null || error === 0 ? [] : [(rate.value - mean) / error];
  });
  if (z.length < 2) {
    return { spread: null, leftOut: 0, limits: points.map(({ lower, upper }) => ({ lower, upper })) };
  }
  const moves = z.slice(1).map((value, at) => Math.abs(value - (z[at] ?? 0)));
  const bound = input.movingRanges === "all" ? Number.POSITIVE_INFINITY : outlying * meanOf(moves);
  // Where every move is 0 none is outlying.
  const kept = moves.filter((move) => move === 0 || move < bound);
  const spread = meanOf(kept) / 1.128;
  const limits = errors.map((error) => {
    if (error === null) return { lower: null, upper: null };
    const reach = input.sigmas * error * spread;
    return { lower: Math.max(0, mean - reach), upper: mean + reach };
  });
  return { spread, leftOut: moves.length - kept.length, limits };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
