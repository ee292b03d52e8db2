import { quantileOfBinomialHalf } from "./binomial-half.ts";
import { quantileOfList } from "./quantile-of-list.ts";

/** One point of a control chart in order of time; null limits are none. */
export interface ChartPoint {
  readonly value: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** The rules that look for more than chance in a series of points. */
export const signalRules = ["outside-limits", "long-run", "few-crossings"] as const;
export type SignalRule = (typeof signalRules)[number];

/** What a rule found, in words for people, with the places of the points that it is about (from 0). */
export interface RunSignal {
  readonly rule: SignalRule;
  readonly sentence: string;
  readonly points: readonly number[];
}

/** What the rules found, and in words why runs were not judged; null where they were. */
export interface RunFindings {
  readonly signals: readonly RunSignal[];
  readonly runsLeftOff: string | null;
  /** What runs were judged against; null where they were not. */
  readonly median: number | null;
}

/**
 * Looks for signs that a series of points does not vary by chance alone:
 * a point outside its limits (Shewhart, from memory); a run of points on one side of the median longer than log2(n) + 3,
 * rounded; and fewer crossings of the median than the 5th percentile of a fair coin's in n - 1 throws. n leaves out
 * points on the median, which neither make nor break a run.
 * The last two are for data that are as often above the median as below it: they are left off, with the reason, where
 * more than half of the points are equal (then the median is that value) and below ten useful points (common practice).
 * Source of the last two: Anhoej and Olesen, PLoS ONE 2014;9:e113825, and Anhoej, PLoS ONE 2015;10:e0121349 (from
 * memory), in the form that qicharts2 0.8.1 gives them.
 */
export function runSignals(points: readonly ChartPoint[]): RunFindings {
  const outside = points.flatMap(({ value, lower, upper }, at) =>
    (lower !== null && value < lower) || (upper !== null && value > upper) ? [at] : [],
  );
  const signals: RunSignal[] = [];
  if (outside.length > 0) signals.push({ rule: "outside-limits", sentence: outsideWords(outside), points: outside });
  const values = points.map(({ value }) => value);
  if (mostEqual(values) > values.length / 2) {
    const sentence = "Runs are not judged: more than half of the points have the same value.";
    return { signals, runsLeftOff: sentence, median: null };
  }
  const median = values.length === 0 ? 0 : quantileOfList(values, 0.5);
  const useful = values.flatMap((value, at) => (value === median ? [] : [{ at, above: value > median }]));
  if (useful.length < fewestUseful) {
    const sentence = `Runs are not judged: fewer than ${fewestUseful} points are off the median.`;
    return { signals, runsLeftOff: sentence, median: null };
  }
  const runs = runsOf(useful);
  return { signals: [...signals, ...longRun(runs, useful.length), ...fewCrossings(runs)], runsLeftOff: null, median };
}

const fewestUseful = 10;

function longRun(runs: readonly (readonly number[])[], useful: number): RunSignal[] {
  const longest = runs.reduce((best, run) => (run.length > best.length ? run : best), []);
  const allowed = Math.round(Math.log2(useful) + 3);
  if (longest.length <= allowed) return [];
  const sentence = `${longest.length} points in a row are on one side of the median; more than ${allowed} of ${useful} are rare by chance.`;
  return [{ rule: "long-run", sentence, points: longest }];
}

function fewCrossings(runs: readonly (readonly number[])[]): RunSignal[] {
  const useful = runs.flat();
  const fewest = quantileOfBinomialHalf(0.05, useful.length - 1);
  const crossings = runs.length - 1;
  if (crossings >= fewest) return [];
  const sentence = `The line crosses the median ${crossings === 1 ? "once" : `${crossings} times`}; fewer than ${fewest} for ${useful.length} points are rare by chance.`;
  return [{ rule: "few-crossings", sentence, points: useful }];
}

function mostEqual(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return Math.max(0, ...counts.values());
}

function outsideWords(outside: readonly number[]): string {
  return outside.length === 1 ? "1 point is outside its limits." : `${outside.length} points are outside their limits.`;
}

function runsOf(useful: readonly { at: number; above: boolean }[]): number[][] {
  const runs: number[][] = [];
  for (const [place, { at, above }] of useful.entries()) {
    if (place > 0 && useful[place - 1]?.above === above) runs.at(-1)?.push(at);
    else runs.push([at]);
  }
  return runs;
}
