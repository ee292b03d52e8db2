import { writeFileSync } from "node:fs";
import { simulateAlarms, simulatedCharts } from "./false-alarms/simulate.ts";

// `npx tsx scripts/false-alarms.ts` simulates every control chart where nothing but chance is at work, and writes how
// often each rule raises an alarm to src/domain/statistics/false-alarm-table.ts. It takes some minutes.
const [series, seed] = [10_000, 20_261_130];
const [lengths, rates] = [
  [12, 24, 60],
  [0.5, 2, 6, 20, 60],
];

const rows: string[] = [];
for (const chart of simulatedCharts)
  for (const months of lengths)
    for (const perYear of rates) {
      const found = simulateAlarms({ chart, months, perYear, series, seed: seed + rows.length });
      const counts = [found.drawn, found["outside-limits"], found["long-run"], found["few-crossings"]];
      rows.push(`  ["${chart}", ${months}, ${perYear}, ${counts.join(", ")}],`);
    }

const text = `/** Made by scripts/false-alarms.ts: the seed of its first row, and how many series were drawn for each. */
export const simulation = { seed: ${seed}, series: ${series} } as const;

/** Chart, months, events a year, series that made a chart, and alarms: outside limits, long run, few crossings. */
export type FalseAlarmRow = readonly [
  chart: "u" | "laney" | "g" | "t",
  months: number,
  perYear: number,
  drawn: number,
  outside: number,
  longRun: number,
  fewCrossings: number,
];

/**
 * How often chance alone raised an alarm on charts of so many months and events a year, as {@link FalseAlarmRow}. The
 * seed of a row is the first one plus its place.
 */
export const falseAlarmTable: readonly FalseAlarmRow[] = [
${rows.join("\n")}
];
`;
writeFileSync(new URL("../src/domain/statistics/false-alarm-table.ts", import.meta.url), text);
