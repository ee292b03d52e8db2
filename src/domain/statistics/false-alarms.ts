import { type FalseAlarmRow, falseAlarmTable, simulation } from "./false-alarm-table.ts";
import type { SignalRule } from "./run-rules.ts";

/** How often chance alone raises each rule's alarm on charts of one kind, by simulation. */
export interface FalseAlarms {
  /** The simulated conditions that are nearest to the chart's own. */
  readonly perYear: number;
  readonly months: number;
  readonly series: number;
  readonly seed: number;
  /** The share of charts with an alarm, 0 to 1. */
  readonly rates: Readonly<Record<SignalRule, number>>;
  /** Whether a rule's false alarms are few enough to use it. */
  readonly isUsed: Readonly<Record<SignalRule, boolean>>;
}

/** How often a rule is meant to raise an alarm by chance: 5% of charts for runs, 0.27% of points for limits. */
const [nominalRun, nominalPoint] = [0.05, 0.0027];
/** A rule with more than so many times its nominal false alarms is left off. The factor is our choice. */
const mostTimes = 2;

/**
 * The simulated false alarms of a chart: those of the months and events a year that are nearest by their ratio. A rule is
 * used where chance alone raises it at most twice as often as it is meant to.
 * Source of the nominal rates: 3 standard errors of a normal variable; Anhoej and Olesen, PLoS ONE 2014;9:e113825 (5%).
 */
export function falseAlarms(
  chart: FalseAlarmRow[0],
  { events, months }: { readonly events: number; readonly months: number },
): FalseAlarms {
  const perYear = (12 * events) / months;
  const distance = (a: number, b: number) => Math.abs(Math.log(Math.max(a, 1e-9) / b));
  const [nearest] = falseAlarmTable
    .filter(([kind]) => kind === chart)
    .map((row) => ({ row, far: [distance(months, row[1]), distance(perYear, row[2])] as const }))
    .sort((a, b) => a.far[0] - b.far[0] || a.far[1] - b.far[1]);
  if (!nearest) throw new Error(`no simulation of the chart ${chart}`);
  const [, simulatedMonths, simulatedRate, drawn, outside, run, crossings] = nearest.row;
  const share = (alarms: number) => (drawn === 0 ? 0 : alarms / drawn);
  const rates = { "outside-limits": share(outside), "long-run": share(run), "few-crossings": share(crossings) };
  // Charts of rates have a point a month, charts of gaps one for each event but the first.
  const isOfGaps = chart === "g" || chart === "t";
  const points = isOfGaps ? Math.max(1, (simulatedRate * simulatedMonths) / 12 - 1) : simulatedMonths;
  const nominalOutside = 1 - (1 - nominalPoint) ** points;
  return {
    ...{ perYear: simulatedRate, months: simulatedMonths, ...simulation, rates },
    isUsed: {
      "outside-limits": rates["outside-limits"] <= mostTimes * nominalOutside,
      "long-run": rates["long-run"] <= mostTimes * nominalRun,
      "few-crossings": rates["few-crossings"] <= mostTimes * nominalRun,
    },
  };
}
