import { byarLimits } from "./byar-limits.ts";
import { exactLimits } from "./exact-limits.ts";
import type { CountAndLevel, Interval, LimitMethod } from "./interval.ts";
import { midPLimits } from "./mid-p-limits.ts";

/**
 * A published choice of method. `mid-p` takes mid-P limits for every count: published hospital rows of 2015 follow it
 * above 100 observed too. `mid-p-to-100` takes Byar's above 100 (the text of the CDC's routines since 2014, which those
 * rows do not follow). `exact-to-14` takes exact limits up to 14 observed and Byar's from 15 on (the routine of June
 * 2011, which every published row of 2012 follows). The check is `tests/reference/hospital-sir.test.ts`.
 */
export type LimitRule = "mid-p" | "mid-p-to-100" | "exact-to-14";

/** Either a published rule or one method for all counts. */
export type LimitChoice = LimitRule | LimitMethod;

const methods: Record<LimitMethod, (count: CountAndLevel) => Interval> = {
  exact: exactLimits,
  "mid-p": midPLimits,
  byar: byarLimits,
};

/**
 * The limits of the mean of a Poisson count by a published rule or by one method; the result names the method used.
 * Special cases and errors are those of the method.
 */
export function poissonLimits(count: CountAndLevel & { by: LimitChoice }): Interval {
  return methods[methodFor(count.by, count.observed)](count);
}

function methodFor(by: LimitChoice, observed: number): LimitMethod {
  if (by === "mid-p-to-100") return observed <= 100 ? "mid-p" : "byar";
  if (by === "exact-to-14") return observed <= 14 ? "exact" : "byar";
  return by;
}
