import type { FalseAlarms } from "../statistics/false-alarms.ts";
import { type ChartPoint, type RunSignal, runSignals, type SignalRule, signalRules } from "../statistics/run-rules.ts";

const ruleNames: Readonly<Record<SignalRule, string>> = {
  "outside-limits": "outside limits",
  "long-run": "long run",
  "few-crossings": "few crossings",
};

/** What the rules found on a control chart, and what is written below it. */
export interface Judged {
  readonly signals: readonly RunSignal[];
  readonly notes: readonly string[];
  /** What runs were judged against; null where they were not. */
  readonly median: number | null;
}

/** Judges a chart by the rules whose false alarms are few enough, and says so of the others. */
export function judged(points: readonly ChartPoint[], alarms: FalseAlarms): Judged {
  const { signals: found, runsLeftOff, median } = runSignals(points);
  const signals = found.filter(({ rule }) => alarms.isUsed[rule]);
  const left = signalRules.filter((rule) => !alarms.isUsed[rule]);
  return {
    ...{ signals, median },
    notes: [
      ...signals.map(({ sentence }) => sentence),
      ...(runsLeftOff === null ? [] : [runsLeftOff]),
      ...left.map(
        (rule) =>
          `The rule "${ruleNames[rule]}" is not used: chance alone raises it more than twice as often as it is meant to.`,
      ),
      falseAlarmNote(alarms),
    ],
  };
}

/** The simulated false alarms of each rule, as the label and values of a note. */
export function falseAlarmNote({ rates, perYear, months, series, seed }: FalseAlarms): string {
  const shares = signalRules.map((rule) => `${ruleNames[rule]} ${percent(rates[rule])}`).join(", ");
  const simulated = `${series.toLocaleString("en-US")} simulated charts of ${months} months with ${perYear} CAUTIs a year, seed ${seed}`;
  return `False alarms by chance alone: ${shares} of charts (${simulated}).`;
}

/** A share of charts as a percentage. */
export function percent(share: number): string {
  return `${(share * 100).toFixed(1)}%`;
}

/** What the rules found, by the place of the point in the chart: outside its limits before part of a run. */
export function markedPlaces(signals: readonly RunSignal[], places: readonly number[]): Map<number, "outside" | "run"> {
  const marked = new Map<number, "outside" | "run">();
  // Few crossings are a matter of the whole series: marking every point of it would point at nothing.
  for (const { rule, points } of signals.filter(({ rule }) => rule !== "few-crossings").toReversed()) {
    for (const at of points) marked.set(places[at] ?? 0, rule === "outside-limits" ? "outside" : "run");
  }
  return marked;
}
