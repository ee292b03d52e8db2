import { solveRising } from "./solve-rising.ts";

/** A probability with its complement, each to its own precision. */
export interface Probability {
  readonly p: number;
  readonly q: number;
}

/** Something that depends on a probability, with its slope over p. */
export type TailOfProbability = (at: Probability) => { readonly value: number; readonly slope: number };

/**
 * The probability p at which a tail that rises (or falls) with p is `wanted`, between 0 and 1.
 * Method: Newton's steps on ln(tail) over ln(p / q). Error: that of the tail.
 */
export function solveProbability(tail: TailOfProbability, wanted: number, way: "rises" | "falls"): Probability {
  const sign = way === "rises" ? 1 : -1;
  const target = Math.log(wanted);
  const t = solveRising((logit) => {
    const at = fromLogit(logit);
    const { value, slope } = tail(at);
    return { value: sign * (Math.log(value) - target), slope: (sign * slope * at.p * at.q) / value };
  }, 0);
  return fromLogit(t);
}

function fromLogit(t: number): Probability {
  const small = Math.exp(-Math.abs(t)) / (1 + Math.exp(-Math.abs(t)));
  const large = 1 / (1 + Math.exp(-Math.abs(t)));
  return t < 0 ? { p: small, q: large } : { p: large, q: small };
}
