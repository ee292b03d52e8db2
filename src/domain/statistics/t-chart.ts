import { refuseUnlessAmount } from "./check-figures.ts";

/** A t chart: times between events with limits. */
export interface TChart {
  readonly center: number;
  /** 0 where the limit of the transformed times would be negative. */
  readonly lower: number;
  readonly upper: number;
}

/** The power that makes waiting times of a steady rate nearly normal. */
const power = 1 / 3.6;

/**
 * A t chart of times between events (hours, or days where they are not counted in catheter-days): times raised to 1 / 3.6,
 * limits at 3 / 1.128 mean moving ranges around their mean, and back.
 * Null, with the reason, for fewer than two times or a time of 0, which the transformation does not fit: use a g chart.
 * A Problem for times that cannot be.
 * Source: Nelson, J Qual Technol 1994;26:88-91 (from memory), checked against qicharts2 0.8.1. Error: below 1e-12, relative.
 */
export function tChart(times: readonly number[]): TChart | { readonly value: null; readonly reason: string } {
  for (const time of times) refuseUnlessAmount("time", time);
  if (times.length < 2) return { value: null, reason: "Fewer than two times between infections make no chart." };
  if (times.includes(0)) return { value: null, reason: "Two infections fell together, which a t chart cannot show." };
  const even = times.map((time) => time ** power);
  const mean = even.reduce((sum, value) => sum + value, 0) / even.length;
  const moves = even.slice(1).map((value, at) => Math.abs(value - (even[at] ?? 0)));
  const reach = (3 / 1.128) * (moves.reduce((sum, move) => sum + move, 0) / moves.length);
  return {
    center: mean ** (1 / power),
    lower: Math.max(0, mean - reach) ** (1 / power),
    upper: (mean + reach) ** (1 / power),
  };
}
