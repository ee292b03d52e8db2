import { refuse } from "../../../shared/problems.ts";

/** Refuses, as a Problem at `/name`, a value that is not a whole number of zero or more. */
export function refuseUnlessCount(name: string, value: number): void {
  if (Number.isSafeInteger(value) && value >= 0) return;
  refuse("figure-impossible", `${name} must be a whole number of zero or more, not ${value}`, { pointer: `/${name}` });
}

/** Refuses, as a Problem at `/name`, a value that is not a finite number of zero or more. */
export function refuseUnlessAmount(name: string, value: number): void {
  if (Number.isFinite(value) && value >= 0) return;
  refuse("figure-impossible", `${name} must be a number of zero or more, not ${value}`, { pointer: `/${name}` });
}

/** Refuses, as a Problem at `/name`, a value that is not a finite number above zero. */
export function refuseUnlessPositive(name: string, value: number): void {
  if (Number.isFinite(value) && value > 0) return;
  refuse("figure-impossible", `${name} must be a number above zero, not ${value}`, { pointer: `/${name}` });
}

/**
 * Refuses, as a Problem at `/level`, a confidence level that is not a fraction of 0.5 to 0.999999: below half an
 * interval need not hold its estimate, and beyond the upper end rounding takes its digits.
 */
export function refuseUnlessLevel(level: number): void {
  if (level >= 0.5 && level <= 0.999999) return;
  refuse("level-impossible", `level must be a fraction of 0.5 to 0.999999, not ${level}`, { pointer: "/level" });
}
