import { refuseUnlessAmount, refuseUnlessCount, refuseUnlessLevel } from "./check-figures.ts";
import { type Comparison, comparePoisson } from "./compare-poisson.ts";

/** Events and the days over which they were counted; days may be an estimate. */
export interface EventsOverDays {
  readonly events: number;
  readonly days: number;
}

/**
 * Two rates (two wards, or two periods of one) against each other: first / second with mid-P or exact limits and p value.
 * Special cases: as {@link comparePoisson}; without days on a side nothing but the reason. A Problem for figures that
 * cannot be. Many such comparisons find differences by chance: about one in twenty at a level of 0.95.
 * Source: the public statistical routine of the CDC for two rates. Error: below 1e-11, relative.
 */
export function compareRates(input: {
  first: EventsOverDays;
  second: EventsOverDays;
  level: number;
  by: "mid-p" | "exact";
}): Comparison {
  const { first, second, level, by } = input;
  refuseUnlessLevel(level);
  for (const { events, days } of [first, second]) {
    refuseUnlessCount("events", events);
    refuseUnlessAmount("days", days);
  }
  if (first.days === 0 || second.days === 0) {
    const none = { value: null, reason: "One side has no days, so there is no rate to compare." };
    return { ratio: none, lower: none, upper: none, p: none, level };
  }
  const over = ({ events, days }: EventsOverDays) => ({ count: events, over: days });
  return comparePoisson({ first: over(first), second: over(second), level, weight: by === "mid-p" ? 0.5 : 1 });
}
