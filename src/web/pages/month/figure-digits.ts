import { type FigureKey, figureWords } from "../../../../shared/figure-words.ts";

/** Ratios to a prediction are published to three decimals, other ratios and rates to two. */
export function digitsOf(key: FigureKey): number {
  if (key === "sir" || key === "sur") return 3;
  const { kind } = figureWords[key];
  if (kind === "whole") return 0;
  return kind === "amount" ? 1 : 2;
}
