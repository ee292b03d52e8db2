import { describe, expect, it } from "vitest";
import { defaultLimits } from "../../shared/month-report.ts";
import type { LimitChoice } from "../../src/domain/statistics/poisson-limits.ts";
import { sir } from "../../src/domain/statistics/sir.ts";
import type { StandardizedRatio } from "../../src/domain/statistics/standardized-ratio.ts";
import { readRows } from "./read-data.ts";

// Hospitals' CAUTI figures as the US government published them, without names; predicted is printed with 3 decimals.
const rows = readRows("hospital-sir.csv");
// A further published row of 2015, whose catheter-days and printed ratio are not known here: the only one above 100.
const above100 = { row: "further", source: "2015", observed: "103", predicted: "78.414" };
type Row = Record<string, string>;
const limitRows: Row[] = [...rows, { ...above100, sir: "?", ci_lower: "1.078", ci_upper: "1.586", compared: "" }];
const choices: readonly LimitChoice[] = ["exact", "mid-p", "byar", "exact-to-14", "mid-p-to-100"];
const predictedRounding = 0.0005;

type Span = readonly [number, number];

/** The predicted numbers from which a quotient count / predicted prints as it does. */
function predictedFor(count: number, printed: string): Span {
  const decimals = printed.split(".")[1]?.length ?? 0;
  // Ratios of 2012 were rounded to three decimals and then, for print, to two: 1.6348 became 1.635 and 1.64.
  const half = (decimals === 2 ? 0.0055 : 0.5 * 10 ** -decimals) + 1e-9;
  const [low, high] = [Number(printed) - half, Number(printed) + half];
  return [count / high, low <= 0 ? Number.POSITIVE_INFINITY : count / low];
}

function labelOf({ ratio, lower, upper }: StandardizedRatio): string {
  if (ratio.value === null) return "Not Available";
  if (lower.value !== null && lower.value > 1) return "Worse than the National Benchmark";
  if (upper.value !== null && upper.value < 1) return "Better than the National Benchmark";
  return "No Different than National Benchmark";
}

/** Why a row is not what the rule gives for any one predicted number that rounds to the printed one; null when it is. */
function differs(row: Row, by: LimitChoice): string | null {
  const [observed, printed] = [Number(row.observed), Number(row.predicted)];
  const found = sir({ observed, predicted: printed, level: 0.95, by });
  const isWithheld = row.sir === "";
  if (isWithheld !== (found.ratio.value === null)) return "withheld or not";
  if (isWithheld !== (row.ci_upper === "")) return "limits without a ratio";
  if (isWithheld) return row.compared === "" || row.compared === labelOf(found) ? null : "label";
  if ((row.ci_lower === "") !== (found.lower.value === null)) return "lower limit blank or not";
  const spans: Span[] = [[printed - predictedRounding - 1e-9, printed + predictedRounding + 1e-9]];
  for (const [text, ratio] of [
    [row.sir, found.ratio],
    [row.ci_lower, found.lower],
    [row.ci_upper, found.upper],
  ] as const) {
    if (text && text !== "?" && ratio.value !== null && ratio.value > 0)
      spans.push(predictedFor(ratio.value * printed, text));
  }
  const [low, high] = [Math.max(...spans.map(([from]) => from)), Math.min(...spans.map(([, to]) => to))];
  if (low > high) return "ratio or limits";
  return row.compared === "" || row.compared === labelOf(found) ? null : "label";
}

describe("published hospital SIRs", () => {
  it("has its 1,575 rows, of 2012 and 2015", () => {
    const of = (source: string) => rows.filter((row) => row.source === source).length;
    expect([rows.length, of("2012 Q1"), of("2015")]).toEqual([1_575, 1_498, 77]);
  });

  // Rows with limits that each rule matches, of all rows with limits. The rule in force for a year is the one that
  // matches every row of it.
  it.each([
    ["2012 Q1", 587, { exact: 570, "mid-p": 0, byar: 44, "exact-to-14": 587, "mid-p-to-100": 1 }],
    ["2015", 68, { exact: 0, "mid-p": 68, byar: 0, "exact-to-14": 0, "mid-p-to-100": 67 }],
  ] as const)("which published rule the limits of %s follow", (source, total, expected) => {
    const chosen = limitRows.filter((row) => row.source === source && row.sir !== "");
    const matched = Object.fromEntries(
      choices.map((by) => [by, chosen.filter((row) => differs(row, by) === null).length]),
    );
    for (const by of choices)
      process.stdout.write(`hospital SIRs of ${source}: ${matched[by]}/${chosen.length} by ${by}\n`);
    expect(chosen).toHaveLength(total);
    expect(matched).toEqual(expected);
  });

  it.each([
    ["2012 Q1", "exact-to-14", 1_498],
    ["2015", "mid-p", 78],
  ] as const)("every row of %s, withheld and labeled ones included, is what %s gives", (source, by, total) => {
    const chosen = limitRows.filter((row) => row.source === source);
    const wrong = chosen.flatMap((row) => {
      const reason = differs(row, by);
      return reason === null ? [] : [`row ${row.row}: ${reason}`];
    });
    process.stdout.write(`hospital rows of ${source}: ${chosen.length - wrong.length}/${chosen.length} by ${by}\n`);
    expect([wrong, chosen.length]).toEqual([[], total]);
  });

  it("103 observed and 78.414 predicted print the published limits by the rule in use, and not by Byar's", () => {
    const limits = (by: LimitChoice) => {
      const { lower, upper } = sir({ observed: 103, predicted: 78.414, level: 0.95, by });
      return [lower.value?.toFixed(3), upper.value?.toFixed(3)];
    };
    expect(limits(defaultLimits)).toEqual(["1.078", "1.586"]);
    expect(limits("mid-p-to-100")).toEqual(["1.072", "1.593"]);
  });
});
