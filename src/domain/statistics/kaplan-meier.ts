import { refuseUnlessAmount } from "./check-figures.ts";

/** One time that was watched: how long, and whether it ended in the event or was only watched so far (censored). */
export interface WatchedTime {
  readonly time: number;
  readonly isEvent: boolean;
}

/** The curve at one time at which something ended. */
export interface SurvivalStep {
  readonly time: number;
  /** How many were still watched just before this time. */
  readonly atRisk: number;
  readonly events: number;
  readonly censored: number;
  /** The share that lasts longer than this time. */
  readonly survival: number;
  /** Greenwood's sum: the variance of ln(survival); null once nothing is left. */
  readonly logVariance: number | null;
}

/**
 * The Kaplan-Meier curve: one step for each time at which anything ended, in order. A time both ended and censored at the
 * same moment is still at risk for the events of that moment.
 * Special cases: no times at all give no steps; once the last one ends in an event the curve is 0 and has no variance.
 * A Problem for times that are negative or no numbers.
 * Source: Kaplan and Meier, J Am Stat Assoc 1958;53:457-481; values checked against survfit of the R package survival 3.5-3.
 * Error: below 1e-12, relative.
 */
export function kaplanMeier(times: readonly WatchedTime[]): SurvivalStep[] {
  for (const { time } of times) refuseUnlessAmount("time", time);
  const sorted = times.toSorted((a, b) => a.time - b.time);
  const steps: SurvivalStep[] = [];
  let [atRisk, survival, logVariance] = [sorted.length, 1, 0 as number | null];
  for (let from = 0; from < sorted.length; ) {
    const time = sorted[from]?.time ?? 0;
    let to = from;
    let events = 0;
    for (; to < sorted.length && sorted[to]?.time === time; to++) events += sorted[to]?.isEvent ? 1 : 0;
    survival *= (atRisk - events) / atRisk;
    if (logVariance !== null) {
      logVariance = events === atRisk ? null : logVariance + events / (atRisk * (atRisk - events));
    }
    steps.push({ time, atRisk, events, censored: to - from - events, survival, logVariance });
    atRisk -= to - from;
    from = to;
  }
  return steps;
}

/** The curve's value at a time: that of the last step at or before it. */
export function survivalAt(steps: readonly SurvivalStep[], time: number): number {
  return steps.findLast((step) => step.time <= time)?.survival ?? 1;
}
