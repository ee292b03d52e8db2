import { refuse } from "../../../shared/problems.ts";
import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount, refuseUnlessLevel } from "./check-figures.ts";

/** A part of a whole (catheter-days of patient-days), and the level of the limits that are wanted. */
export interface Proportion {
  readonly part: number;
  readonly whole: number;
  /** A fraction, such as 0.95. */
  readonly level: number;
}

export interface ProportionLimits {
  readonly lower: Ratio;
  readonly upper: Ratio;
}

/**
 * The reason why a proportion has no limits (a whole of 0, or figures that are not whole and so are estimates), or
 * undefined where it has some. A Problem for figures that cannot be.
 */
export function withoutLimits({ part, whole, level }: Proportion): ProportionLimits | undefined {
  refuseUnlessAmount("part", part);
  refuseUnlessAmount("whole", whole);
  refuseUnlessLevel(level);
  if (part > whole) refuse("figure-impossible", `part, ${part}, is more than whole, ${whole}`, { pointer: "/part" });
  const reason = reasonWithout(part, whole);
  if (reason === undefined) return undefined;
  const none = { value: null, reason };
  return { lower: none, upper: none };
}

function reasonWithout(part: number, whole: number): string | undefined {
  if (whole === 0) return "There is nothing to take a part of, so there are no limits.";
  if (Number.isSafeInteger(part) && Number.isSafeInteger(whole)) return undefined;
  return "The figures are an estimate, so there are no limits.";
}
