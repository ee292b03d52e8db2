import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import type { RandomGenerator } from "pure-rand/types/RandomGenerator";
import { controlPoints } from "../../src/domain/statistics/control-points.ts";
import { gChart } from "../../src/domain/statistics/g-chart.ts";
import { laneyUChart } from "../../src/domain/statistics/laney-u-chart.ts";
import { type ChartPoint, runSignals, type SignalRule } from "../../src/domain/statistics/run-rules.ts";
import { tChart } from "../../src/domain/statistics/t-chart.ts";
import { uChart } from "../../src/domain/statistics/u-chart.ts";

export const simulatedCharts = ["u", "laney", "g", "t"] as const;
export type SimulatedChart = (typeof simulatedCharts)[number];

/** What is simulated: months in which nothing but chance is at work. */
export interface Simulated {
  readonly chart: SimulatedChart;
  readonly perYear: number;
  readonly months: number;
  readonly series: number;
  readonly seed: number;
}

/** How many of the series made a chart, and on how many of those each rule raised an alarm. */
export interface Alarms extends Record<SignalRule, number> {
  readonly drawn: number;
}

/** A ward with about ten catheters in place: 240 to 360 catheter-days a month, each as likely. */
const [fewestDays, mostDays] = [240, 360];
const daysPerMonth = (fewestDays + mostDays) / 2;

/** Draws the series and counts the alarms; the same seed gives the same counts. */
export function simulateAlarms({ chart, perYear, months, series, seed }: Simulated): Alarms {
  const generator = xoroshiro128plus(seed);
  const perDay = perYear / (12 * daysPerMonth);
  const alarms = { drawn: 0, "outside-limits": 0, "long-run": 0, "few-crossings": 0 };
  for (let at = 0; at < series; at++) {
    const points = pointsOf[chart](generator, { perDay, months });
    if (points === null) continue;
    alarms.drawn++;
    for (const { rule } of runSignals(points).signals) alarms[rule]++;
  }
  return alarms;
}

interface Drawn {
  /** Events per catheter-day. */
  readonly perDay: number;
  readonly months: number;
}

const pointsOf: Record<SimulatedChart, (from: RandomGenerator, drawn: Drawn) => ChartPoint[] | null> = {
  u: (from, drawn) => {
    const periods = drawPeriods(from, drawn);
    const { points } = uChart({ periods, sigmas: 3 });
    return controlPoints(
      periods,
      points.map(({ exactLower, exactUpper }) => ({ lower: exactLower, upper: exactUpper })),
    );
  },
  laney: (from, drawn) => {
    const periods = drawPeriods(from, drawn);
    return controlPoints(periods, laneyUChart({ periods, sigmas: 3, movingRanges: "all" }).limits);
  },
  g: (from, { perDay, months }) => {
    const gaps = gapsWithin(months * daysPerMonth, () => Math.floor(Math.log(uniform(from)) / Math.log1p(-perDay)) + 1);
    const found = gChart(gaps.map((gap) => gap - 1));
    return "value" in found ? null : gaps.map((gap) => ({ value: gap - 1, lower: found.lower, upper: found.upper }));
  },
  t: (from, { perDay, months }) => {
    const times = gapsWithin(months * daysPerMonth, () => -Math.log(uniform(from)) / perDay);
    const found = tChart(times);
    return "value" in found ? null : times.map((value) => ({ value, lower: found.lower, upper: found.upper }));
  },
};

/** Steps between the events that fall within so many days: that up to the first event is none. */
function gapsWithin(days: number, next: () => number): number[] {
  const gaps: number[] = [];
  let passed = next();
  for (let step = next(); passed + step <= days; step = next()) {
    gaps.push(step);
    passed += step;
  }
  return gaps;
}

function drawPeriods(from: RandomGenerator, { perDay, months }: Drawn): { events: number; days: number }[] {
  return Array.from({ length: months }, () => {
    const days = fewestDays + Math.floor(uniform(from) * (mostDays - fewestDays + 1));
    return { events: poisson(from, perDay * days), days };
  });
}

/** By the products of uniform draws (Knuth, from memory): means here are below 7. */
function poisson(from: RandomGenerator, mean: number): number {
  const least = Math.exp(-mean);
  let count = 0;
  for (let product = uniform(from); product > least; product *= uniform(from)) count++;
  return count;
}

/** Over 0 and under 1. */
function uniform(from: RandomGenerator): number {
  return ((from.next() >>> 0) + 0.5) / 2 ** 32;
}
