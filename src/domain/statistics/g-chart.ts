import { refuseUnlessCount } from "./check-figures.ts";
import { quantileOfList } from "./quantile-of-list.ts";

/** A g chart: gaps between events, and what is expected of them. */
export interface GChart {
  /** The probability that a catheter-day ends a gap: 1 / (mean + 1). */
  readonly probability: number;
  readonly mean: number;
  /** sqrt(mean (mean + 1)). */
  readonly standardDeviation: number;
  /** The center line: the median of the gaps. */
  readonly median: number;
  /** Mean plus three standard deviations; the lower limit of that kind is 0 and says nothing. */
  readonly upperThreeSigma: number;
  /** The gaps that are undercut with probability 0.00135, 0.5 and 0.99865. */
  readonly lower: number;
  readonly middle: number;
  readonly upper: number;
}

/**
 * A g chart of catheter-days between infections: a gap of y means that y catheter-days passed before the one on which
 * the next infection fell. Fit for rare infections: a long gap is good news, and the lower limit is mostly 0.
 * Method: the geometric distribution from zero, with probability 1 / (mean + 1). Null, with the reason, for fewer than two
 * gaps. A Problem for gaps that are not counts.
 * Source: Benneyan, Health Care Manag Sci 2001;4:305-318 (from memory); values checked against qicharts2 0.8.1 and an
 * independent program. Error: below 1e-12, relative; the quantiles are whole.
 */
export function gChart(gaps: readonly number[]): GChart | { readonly value: null; readonly reason: string } {
  for (const gap of gaps) refuseUnlessCount("gap", gap);
  if (gaps.length < 2) return { value: null, reason: "Fewer than two gaps between infections make no chart." };
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const probability = 1 / (mean + 1);
  const quantile = (fraction: number) => geometricQuantile(fraction, probability);
  const standardDeviation = Math.sqrt(mean * (mean + 1));
  return {
    ...{ probability, mean, standardDeviation, median: quantileOfList(gaps, 0.5) },
    upperThreeSigma: mean + 3 * standardDeviation,
    ...{ lower: quantile(0.00135), middle: quantile(0.5), upper: quantile(0.99865) },
  };
}

/** The smallest y with 1 - (1 - p)^(y + 1) >= fraction; the margin keeps rounding from adding a day. */
function geometricQuantile(fraction: number, probability: number): number {
  if (probability === 1) return 0;
  return Math.max(0, Math.ceil(Math.log1p(-fraction) / Math.log1p(-probability) - 1 - 1e-12));
}
