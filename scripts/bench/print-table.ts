import type { BenchLine } from "./bench-line.ts";

/** The figures as a plain table; a ratio is ours divided by the baseline. */
export function tableOf(lines: readonly BenchLine[]): string {
  const rows = [
    ["measured", "ours", "baseline", "against", "ratio"],
    ...lines.map(({ what, oursS, baseline, baselineS }) => [
      what,
      duration(oursS),
      duration(baselineS),
      baseline,
      (oursS / baselineS).toFixed(2),
    ]),
  ];
  const widths = [0, 1, 2, 3, 4].map((i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

function duration(seconds: number): string {
  return seconds >= 1 ? `${seconds.toFixed(2)} s` : `${(seconds * 1000).toFixed(2)} ms`;
}
