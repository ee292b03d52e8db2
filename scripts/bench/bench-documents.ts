import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { month } from "../../shared/day.ts";
import { figureKeys, figureWords } from "../../shared/figure-words.ts";
import type { Figure, MonthReport } from "../../shared/month-report.ts";
import { sheetCsv } from "../../src/csv/sheet-csv.ts";
import { browserPdf } from "../../src/documents/browser-pdf.ts";
import { documentXlsx } from "../../src/documents/document-xlsx.ts";
import { findBrowser } from "../../src/documents/find-browser.ts";
import { plainPdf } from "../../src/documents/plain-pdf.ts";
import { monthDocument } from "../../src/domain/reports/month-document.ts";
import { monthFiguresSheet } from "../../src/domain/reports/month-figures-sheet.ts";
import { type BenchLine, type BenchResult, medianOf } from "./bench-line.ts";

/** The document of a month of so many wards, as a workbook and as PDF, against the same figures as CSV. */
export async function benchDocuments({ seed, wards }: { seed: number; wards: number }): Promise<BenchResult> {
  const report = drawnReport(seed, wards);
  const document = monthDocument(report, null, { more: [monthFiguresSheet(report)] });
  const csv = await medianOf(3, () => document.sheets.map(sheetCsv));
  const browser = findBrowser(process.env.CHROMIUM_PATH ?? null);
  const kinds = [
    ["XLSX", () => documentXlsx(document)],
    ["PDF without a browser", () => plainPdf(document)],
    ...(browser === null ? [] : [["PDF by a browser", () => browserPdf(document, browser)] as const]),
  ] as const;
  const lines: BenchLine[] = [];
  const notes: string[] = [];
  for (const [name, make] of kinds) {
    const startMs = performance.now();
    const bytes = await make();
    const oursS = (performance.now() - startMs) / 1000;
    lines.push({
      what: `${name} of a month of ${wards} wards`,
      oursS,
      baseline: "its sheets as CSV",
      baselineS: csv.seconds,
    });
    const peakMb = Math.round(process.resourceUsage().maxRSS / 1024);
    notes.push(`${name}: ${(bytes.length / 1e6).toFixed(1)} MB; peak memory of this process so far ${peakMb} MB.`);
  }
  const rows = document.sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  notes.push(`Documents: ${rows} rows, ${document.charts.length} charts. A browser's own memory is not in its figure.`);
  return { lines, notes };
}

function drawnReport(seed: number, wards: number): MonthReport {
  const generator = xoroshiro128plus(seed);
  const next = () => (generator.next() >>> 0) / 2 ** 32;
  const figures = (): Figure[] =>
    figureKeys.map((key) => {
      const isWhole = figureWords[key].kind === "whole";
      const value = isWhole ? Math.floor(next() * 900) : next();
      const none = { p: null, reason: null, limitsReason: null };
      const limits = isWhole ? { lower: null, upper: null } : { lower: value * 0.6, upper: value * 1.6 };
      return { key, value, numerator: value, denominator: 1, method: "mid-P limits", ...limits, ...none };
    });
  const nothing = { value: null, reason: "No baseline is set for this month.", steps: [] };
  const insertions = { places: [], inserters: [] };
  return {
    ...{
      month: month.parse("2026-10"),
      facility: "Alder Bay Hospital",
      level: 0.95,
      limits: "mid-p",
      goal: null,
    },
    ...{ first: "2026-10-01" as MonthReport["first"], last: "2026-10-31" as MonthReport["last"] },
    ...{ asOf: "2026-11-05T12:00:00.000Z", baselines: { infections: null, catheterDays: null }, completeness: null },
    wards: Array.from({ length: wards }, (_, at) => ({
      ...{ wardId: at + 1, code: `W${at + 1}`, name: `Ward ${at + 1}`, type: "medical ward", edition: "us-2024" },
      ...{ denominators: "Counted at the daily census.", predicted: { infections: nothing, catheterDays: nothing } },
      ...{ figures: figures(), insertions },
    })),
    total: { figures: figures(), insertions },
    ...{ cautions: ["Small wards have wide limits."], sources: ["CDC Patient Safety Component Manual, chapter 7"] },
  };
}
