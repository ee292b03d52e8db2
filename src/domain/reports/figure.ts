import type { FigureKey } from "../../../shared/figure-words.ts";
import type { Figure } from "../../../shared/month-report.ts";
import type { Ratio } from "../counting/ratio.ts";
import type { StandardizedRatio } from "../statistics/standardized-ratio.ts";
import { wilsonLimits } from "../statistics/wilson-limits.ts";

/** The level of every interval of a report. */
export const level = 0.95;

/** A figure of nothing but its key: what is not said is null. */
export function figureOf(key: FigureKey, said: Partial<Omit<Figure, "key">>): Figure {
  const none = { open: null, value: null, numerator: null, denominator: null, lower: null, upper: null, p: null };
  return { key, ...none, method: null, reason: null, limitsReason: null, ...said };
}

/** A number that was counted, or the reason why nobody knows it. */
export function countFigure(key: FigureKey, counted: Ratio, method: string | null = null): Figure {
  if (counted.value === null) return figureOf(key, { reason: counted.reason, method });
  return figureOf(key, { value: counted.value, numerator: counted.value, method });
}

/** A part of a whole with Wilson's limits; `none` is the reason where there is nothing to take a part of. */
export function shareFigure(
  key: FigureKey,
  { part, whole }: { part: number; whole: number },
  { none, counted }: { none: string; counted: string },
): Figure {
  if (whole === 0) return figureOf(key, { numerator: part, denominator: whole, reason: none });
  const { lower, upper } = wilsonLimits({ part, whole, level });
  const method = `${counted}; Wilson's limits`;
  return figureOf(key, {
    ...{ value: part / whole, numerator: part, denominator: whole, method },
    ...limitsOf({ lower, upper }),
  });
}

/** A standardized ratio, or why there is none. `of` says what observed and predicted are added up over. */
export function standardizedFigure(key: FigureKey, ratio: StandardizedRatio, of: string): Figure {
  const { observed, predicted, p } = ratio;
  const figures = { numerator: observed, denominator: predicted };
  if (ratio.ratio.value === null) return figureOf(key, { ...figures, method: of, reason: ratio.ratio.reason });
  return figureOf(key, {
    ...{ value: ratio.ratio.value, ...figures, p: p.value, method: `${of}; ${methodOf(ratio.method)}` },
    ...limitsOf(ratio),
  });
}

const methods = { "mid-p": "mid-P limits", exact: "exact limits", byar: "Byar's limits" } as const;

/** A method of limits in words. */
export function methodOf(method: keyof typeof methods | null): string {
  return method === null ? "no limits" : methods[method];
}

/** Two limits, and the first reason why one is missing. */
export function limitsOf({ lower, upper }: { readonly lower: Ratio; readonly upper: Ratio }) {
  const missing = [lower, upper].flatMap((limit) => (limit.value === null ? [limit.reason] : []));
  return { lower: lower.value, upper: upper.value, limitsReason: missing[0] ?? null };
}
