import jstat from "jstat";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { midPLimits } from "../../src/domain/statistics/mid-p-limits.ts";
import { midPTest } from "../../src/domain/statistics/mid-p-test.ts";
import { type BenchResult, medianOf } from "./bench-line.ts";

const { gamma } = jstat.jStat;
const level = 0.95;

/** An observed count with what was predicted. */
interface Pair {
  readonly observed: number;
  readonly predicted: number;
}

/** Limits and p value of one pair. */
interface Found {
  readonly lower: number;
  readonly upper: number;
  readonly p: number;
}

/**
 * Mid-P limits with p values against jstat, a library of the registry whose gamma function keeps nine digits. It has no
 * mid-P limits: once its gamma function under a search for them, written as a user of it would, and once its exact
 * limits with exact p values, which is less work than ours. Throws when limits or p values of the first two differ.
 */
export async function benchIntervals({ seed, intervals }: { seed: number; intervals: number }): Promise<BenchResult> {
  const pairs = drawPairs(seed, intervals);
  const ours = await medianOf(3, () => pairs.map(oursOf));
  // A search takes so long that a tenth of the pairs must do.
  const some = pairs.slice(0, Math.ceil(intervals / 10));
  const searched = await medianOf(1, () => some.map(searchedOf));
  const exact = await medianOf(3, () => pairs.map(exactOf));
  const most = largestDifference(ours.value, searched.value);
  if (most > 1e-8) throw new Error(`limits and p values differ by up to ${most} from those of jstat`);
  const what = `${intervals} mid-P intervals with p values`;
  const scaled = searched.seconds * (pairs.length / some.length);
  return {
    lines: [
      { what, oursS: ours.seconds, baseline: "jstat's gamma function under a search, from a tenth", baselineS: scaled },
      { what, oursS: ours.seconds, baseline: "jstat's exact intervals with exact p values", baselineS: exact.seconds },
    ],
    notes: [
      `Intervals: counts of 0 to 300, most of them small; ${((ours.seconds / intervals) * 1e6).toFixed(1)} microseconds each.`,
      `The largest relative difference from jstat's search is ${most.toExponential(1)}, over ${some.length} intervals.`,
    ],
  };
}

function drawPairs(seed: number, count: number): Pair[] {
  const generator = xoroshiro128plus(seed);
  const next = () => (generator.next() >>> 0) / 2 ** 32;
  return Array.from({ length: count }, () => {
    const observed = Math.floor(300 * next() ** 4);
    return { observed, predicted: Math.max(1, observed + 2 * (2 * next() - 1) * Math.sqrt(observed + 1)) };
  });
}

function oursOf(pair: Pair): Found {
  const { lower, upper } = midPLimits({ observed: pair.observed, level });
  return { lower, upper, p: midPTest(pair) };
}

/** P(X > count) and P(X < count), with half the count in either. */
function tails(count: number, mean: number): { more: number; fewer: number } {
  const most = gamma.cdf(mean, count + 1, 1);
  const least = count === 0 ? 1 : gamma.cdf(mean, count, 1);
  return { more: (most + least) / 2, fewer: 1 - (most + least) / 2 };
}

function searchedOf({ observed, predicted }: Pair): Found {
  const tail = (1 - level) / 2;
  const search = (side: "more" | "fewer") => {
    let [low, high] = [0, observed + 10 * Math.sqrt(observed + 1)];
    for (let step = 0; step < 60 && high - low > 1e-13 * high; step++) {
      const middle = (low + high) / 2;
      if (tails(observed, middle)[side] < tail === (side === "more")) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  const { more, fewer } = tails(observed, predicted);
  const lower = observed === 0 ? 0 : search("more");
  return { lower, upper: search("fewer"), p: Math.min(1, 2 * Math.min(more, fewer)) };
}

function exactOf({ observed, predicted }: Pair): Found {
  const tail = (1 - level) / 2;
  const lower = observed === 0 ? 0 : gamma.inv(tail, observed, 1);
  const least = observed === 0 ? 1 : gamma.cdf(predicted, observed, 1);
  const most = 1 - gamma.cdf(predicted, observed + 1, 1);
  return { lower, upper: gamma.inv(1 - tail, observed + 1, 1), p: Math.min(1, 2 * Math.min(least, most)) };
}

function largestDifference(ours: readonly Found[], theirs: readonly Found[]): number {
  let most = 0;
  for (const [at, found] of theirs.entries()) {
    for (const key of ["lower", "upper", "p"] as const) {
      const [one, other] = [ours[at]?.[key] ?? Number.NaN, found[key]];
      const off = other === 0 ? Math.abs(one) : Math.abs(one / other - 1);
      if (!(off <= most)) most = off;
    }
  }
  return most;
}
