import { binomialDensity } from "./binomial.ts";

/** A table of two rows: of each, how many have the property and how many there are. */
export interface TwoRows {
  readonly first: { readonly part: number; readonly whole: number };
  readonly second: { readonly part: number; readonly whole: number };
}

/**
 * The two-sided mid-P value of a 2 x 2 table given its margins: twice the smaller tail of the hypergeometric
 * distribution, in each of which the observed table weighs half; at most 1.
 * Method: Loader's form of the observed table's probability, its neighbors by recurrence, outward until they no longer
 * add. Special cases: a table that its margins leave no choice gives 1. Callers check the figures.
 * Source: the public statistical routine of the CDC for two proportions. Error: below 1e-11, relative, for wholes up to
 * 500,000 (tests hold it against exact fractions).
 */
export function hypergeometricMidP({ first, second }: TwoRows): number {
  const all = first.whole + second.whole;
  const parts = first.part + second.part;
  if (parts === 0 || parts === all) return 1;
  const mean = first.whole * (parts / all);
  const same = probability({ first, second });
  // Outward from the observed table, so that the sum is the tail on its own side of the mean.
  const beyond = same * (first.part > mean ? upper({ first, second }) : upper({ first: second, second: first }));
  return Math.min(1, 2 * Math.min(beyond + same / 2, 1 - beyond - same / 2));
}

function probability({ first, second }: TwoRows): number {
  const all = first.whole + second.whole;
  const parts = first.part + second.part;
  const at = { p: parts / all, q: (all - parts) / all };
  const rows = binomialDensity(first.part, first.whole, at) * binomialDensity(second.part, second.whole, at);
  return rows / binomialDensity(parts, all, at);
}

/** The sum of the probabilities of more in the first row, in multiples of that of the observed table. */
function upper({ first, second }: TwoRows): number {
  let [sum, term] = [0, 1];
  const most = Math.min(first.whole, first.part + second.part);
  for (let more = 1; first.part + more <= most; more++) {
    const a = first.part + more - 1;
    const c = second.part - more + 1;
    term *= ((first.whole - a) / (a + 1)) * (c / (second.whole - c + 1));
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum;
}
