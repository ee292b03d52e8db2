import type { ChartPeriod } from "./u-chart.ts";
import { uChart } from "./u-chart.ts";

/** The limits of one period on a u' chart; null where it has no days. */
export interface LaneyLimits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * Laney's u' chart: the standard errors of a u chart multiplied by the spread of the rates from one period to the next
 * (mean moving range of their z scores / 1.128), for long series whose rates differ by more than chance.
 * `spread` is null, with limits as on a u chart without it, where fewer than two periods have days or no events exist.
 * A Problem for figures that cannot be.
 * Source: Laney, Quality Engineering 2002;14:531-537, checked against qicharts2 0.8.1. Error: below 1e-12, relative.
 */
export function laneyUChart(input: { periods: readonly ChartPeriod[]; sigmas: number }): {
  spread: number | null;
  limits: readonly LaneyLimits[];
} {
  const { center, points } = uChart(input);
  const mean = center.value ?? 0;
  const errors = input.periods.map(({ days }) => (days === 0 ? null : Math.sqrt(mean / days)));
  const z = points.flatMap(({ rate }, at) => {
    const error = errors[at] ?? 0;
    return rate.value === null || error === 0 ? [] : [(rate.value - mean) / error];
  });
  if (z.length < 2) return { spread: null, limits: points.map(({ lower, upper }) => ({ lower, upper })) };
  const moves = z.slice(1).map((value, at) => Math.abs(value - (z[at] ?? 0)));
  const spread = moves.reduce((sum, move) => sum + move, 0) / moves.length / 1.128;
  const limits = errors.map((error) => {
    if (error === null) return { lower: null, upper: null };
    const reach = input.sigmas * error * spread;
    return { lower: Math.max(0, mean - reach), upper: mean + reach };
  });
  return { spread, limits };
}
