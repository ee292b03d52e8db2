import type { LaneyLimits } from "./laney-u-chart.ts";
import type { ChartPoint } from "./run-rules.ts";
import type { ChartPeriod } from "./u-chart.ts";

/**
 * The periods of a chart of rates as the rules judge them: those with days, in order. A period without events has no
 * lower limit: none at all is no alarm, whatever was expected.
 */
export function controlPoints(periods: readonly ChartPeriod[], limits: readonly LaneyLimits[]): ChartPoint[] {
  return periods.flatMap(({ events, days }, at) => {
    if (days === 0) return [];
    const { lower = null, upper = null } = limits[at] ?? {};
    return [{ value: events / days, lower: events === 0 ? null : lower, upper }];
  });
}
