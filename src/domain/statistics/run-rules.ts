import { quantileOfBinomialHalf } from "./binomial-half.ts";

/** One point of a control chart in order of time; null limits are none. */
export interface ChartPoint {
  readonly value: number;
  readonly center: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** What a rule found, in words for people, with the places of the points that it is about (from 0). */
export interface RunSignal {
  readonly rule: "outside-limits" | "long-run" | "few-crossings";
  readonly sentence: string;
  readonly points: readonly number[];
}

/**
 * Looks for signs that a series of points does not vary by chance alone:
 * a point outside its limits (Shewhart, from memory); a run of points on one side of the center line longer than
 * log2(n) + 3, rounded; and fewer crossings of it than the 5th percentile of a fair coin's. n leaves out points on the
 * center line, which neither make nor break a run. The last two need ten such points (common practice: shorter series
 * cannot tell).
 * Source of the last two: Anhoej and Olesen, PLoS ONE 2014;9:e113825, in the form that qicharts2 0.8.1 gives them.
 */
export function runSignals(points: readonly ChartPoint[]): RunSignal[] {
  const outside = points.flatMap(({ value, lower, upper }, at) =>
    (lower !== null && value < lower) || (upper !== null && value > upper) ? [at] : [],
  );
  const signals: RunSignal[] = [];
  if (outside.length > 0) signals.push({ rule: "outside-limits", sentence: outsideWords(outside), points: outside });
  const useful = points.flatMap(({ value, center }, at) => (value === center ? [] : [{ at, above: value > center }]));
  if (useful.length < fewestUseful) return signals;
  const runs = runsOf(useful);
  const longest = runs.reduce((best, run) => (run.length > best.length ? run : best), []);
  const longestAllowed = Math.round(Math.log2(useful.length) + 3);
  if (longest.length > longestAllowed) {
    const sentence = `${longest.length} points in a row lie on one side of the center line; by chance more than ${longestAllowed} are rare in a series of ${useful.length}.`;
    signals.push({ rule: "long-run", sentence, points: longest });
  }
  const crossings = runs.length - 1;
  const fewestCrossings = quantileOfBinomialHalf(0.05, useful.length - 1);
  if (crossings < fewestCrossings) {
    const sentence = `The line crosses the center ${crossings} times; by chance fewer than ${fewestCrossings} are rare in a series of ${useful.length}.`;
    signals.push({ rule: "few-crossings", sentence, points: useful.map(({ at }) => at) });
  }
  return signals;
}

const fewestUseful = 10;

function outsideWords(outside: readonly number[]): string {
  return outside.length === 1
    ? "1 point lies outside its limits."
    : `${outside.length} points lie outside their limits.`;
}

function runsOf(useful: readonly { at: number; above: boolean }[]): number[][] {
  const runs: number[][] = [];
  for (const [place, { at, above }] of useful.entries()) {
    if (place > 0 && useful[place - 1]?.above === above) runs.at(-1)?.push(at);
    else runs.push([at]);
  }
  return runs;
}
