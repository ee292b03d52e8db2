import { refuseUnlessCount, refuseUnlessLevel } from "./check-figures.ts";
import type { CountAndLevel, Interval } from "./interval.ts";
import { normalUpperQuantile } from "./normal.ts";
import { poissonParts } from "./poisson.ts";
import { solveRising } from "./solve-rising.ts";

/**
 * Mid-P limits of the mean of a Poisson count: as the exact ones, but the observed count weighs half in either tail.
 * They solve P(X > o | lower) + P(X = o | lower) / 2 = (1 - level) / 2 and P(X < o | upper) + P(X = o | upper) / 2 =
 * (1 - level) / 2.
 * Method: Newton's steps on ln(tail) over ln(mean), from Byar's form at half a count more. Special case: 0 observed has
 * the lower limit 0 and the upper limit -ln(1 - level). A Problem for anything but a count or a level.
 * Source: Cohen and Yang, Stat Med 1994;13:2189-2203, as cited by the published routines of the CDC. Error: below 1e-11,
 * relative, up to 3,000,000 observed.
 */
export function midPLimits({ observed, level }: CountAndLevel): Interval {
  refuseUnlessCount("observed", observed);
  refuseUnlessLevel(level);
  if (observed === 0) return { lower: 0, upper: -Math.log1p(-level), level, method: "mid-p" };
  const tail = (1 - level) / 2;
  const z = normalUpperQuantile(tail);
  const lower = limit(observed, Math.log(tail), { side: "more", z: -z });
  return { lower, upper: limit(observed, Math.log(tail), { side: "fewer", z }), level, method: "mid-p" };
}

function limit(observed: number, wanted: number, { side, z }: { side: "more" | "fewer"; z: number }): number {
  const sign = side === "more" ? 1 : -1;
  const half = observed + 0.5;
  const start = half * (1 - 1 / (9 * half) + z / (3 * Math.sqrt(half))) ** 3;
  const log = solveRising(
    (t) => {
      const mean = Math.exp(t);
      const parts = poissonParts(observed, mean);
      const part = parts[side] + parts.same / 2;
      // The tail changes with the mean by half the probabilities of this count and of the one below it, which is
      // observed / mean times as large.
      const slope = (parts.same * (mean + observed)) / 2;
      return { value: sign * (Math.log(part) - wanted), slope: slope / part };
    },
    Math.log(Math.max(start, 1e-3)),
  );
  return Math.exp(log);
}
