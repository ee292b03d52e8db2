import type { ChartInput } from "../../../shared/chart-input.ts";
import { type FigureKey, figureWords, notFinalWords } from "../../../shared/figure-words.ts";
import { type BaselineNamed, type Figure, limitRules, type MonthReport } from "../../../shared/month-report.ts";
import type { ReportDocument } from "../../../shared/report-document.ts";
import type { Sheet, SheetCell, SheetColumn, SheetMark } from "../../../shared/sheet.ts";
import { hollowNotes } from "../comparison/comparison-facts.ts";
import { type ChangedRow, changedText, changesSheet } from "./changes-after-signing.ts";
import { completenessSheet, completenessText } from "./completeness-sheet.ts";

/** The figures of the summary, in its order; those with limits take three columns. */
const summary: readonly { readonly key: FigureKey; readonly limits: boolean }[] = [
  { key: "patient_days", limits: false },
  { key: "catheter_days", limits: false },
  { key: "utilization", limits: true },
  { key: "infections", limits: false },
  { key: "rate", limits: true },
  { key: "sir", limits: true },
  { key: "sur", limits: false },
  { key: "reviews_in_time", limits: false },
  { key: "bundle_kept", limits: false },
  { key: "days_past_threshold", limits: false },
];

/** More rows than these do not fit a page. */
const mostRows = 12;

/**
 * A month as a document: what its figures rest on, a summary by ward with limits, and pictures of the intervals. `signed`
 * says who signed it and when, in words; null for figures that nobody signed. `more` are further sheets, `changed` is what
 * changed since the month was signed.
 */
export function monthDocument(
  report: MonthReport,
  signed: string | null,
  { more = [], changed = [] }: { readonly more?: readonly Sheet[]; readonly changed?: readonly ChangedRow[] } = {},
): ReportDocument {
  const { month, facility, cautions, sources } = report;
  const last = [completenessSheet(report), changesSheet(changed, report)].filter((sheet) => sheet !== null);
  return {
    title: `${facility}: urinary catheters and infections, ${month}`,
    cover: [...coverOf(report, signed), ...changedLine(changed)],
    sheets: [summarySheet(report, changed), ...more, ...last],
    charts: [...intervals(report, "utilization"), ...intervals(report, "rate")],
    ...{ cautions, sources },
  };
}

function coverOf(report: MonthReport, signed: string | null): ReportDocument["cover"] {
  const { facility, first, last, asOf, wards, baselines, goal, limits, level } = report;
  const editions = [...new Set(wards.flatMap(({ edition }) => edition ?? []))];
  const unwatched = wards.filter(({ edition }) => edition === null).map(({ code }) => code);
  return [
    { label: "Facility", text: facility },
    { label: "Period", text: `${first} to ${last}` },
    { label: "Data as of", text: `${asOf} (UTC)` },
    { label: "Signed", text: signed ?? "These figures are not signed: they follow the record as it is now." },
    { label: "Definitions", text: editions.length === 0 ? "No unit was under surveillance." : editions.join(", ") },
    ...(unwatched.length === 0 ? [] : [{ label: "Not under surveillance", text: unwatched.join(", ") }]),
    { label: "Baseline of infections", text: baselineText(baselines.infections) },
    { label: "Baseline of catheter-days", text: baselineText(baselines.catheterDays) },
    { label: "Target", text: goal === null ? "No SIR is aimed at." : `An SIR of ${goal}` },
    { label: "Limits", text: `${limitRules[limits]}; ${level * 100}%` },
  ];
}

function changedLine(changed: readonly ChangedRow[]): ReportDocument["cover"] {
  if (changed.length === 0) return [];
  return [
    { label: "Changed after signing", text: `${changed.length} of what was signed. See “Changed after signing”.` },
  ];
}

function baselineText(baseline: BaselineNamed | null): string {
  if (baseline === null) return "None is in use, so nothing is predicted.";
  const { name, edition, year, population, definition, source } = baseline;
  return `${name}, ${edition} (data of ${year}; ${population}; ${definition}). Source: ${source}`;
}

function summarySheet(report: MonthReport, changed: readonly ChangedRow[]): Sheet {
  const { facility, first, last, asOf, sources, cautions, wards, total } = report;
  const text = (key: string, label: string): SheetColumn => ({ key, label, kind: "text", unit: null });
  const ofNone = completenessText(report, null);
  const columns = summary.flatMap(({ key, limits }): SheetColumn[] => {
    const { label, kind, unit } = figureWords[key];
    const limit = (end: string): SheetColumn => ({ key: `${key}_${end}`, label: `${label}, ${end} limit`, kind, unit });
    return [{ key, label, kind, unit }, ...(limits ? [limit("lower"), limit("upper")] : [])];
  });
  return {
    ...{ id: "month-summary", title: "Summary by unit", period: `${first} to ${last}, ${facility}`, asOf, sources },
    columns: [
      ...[text("ward", "Unit"), text("name", "Name"), ...columns],
      ...[text("missing", "Why figures are missing"), text("not_final", "Not final")],
      ...[text("completeness", "Missing or doubtful data"), text("non_default_readings", "Non-default readings")],
      text("changed_after_signing", "Changed after signing"),
    ],
    rows: [
      ...wards.map(({ code, name, figures, nonDefaultReadings: readings = [] }) => [
        ...[code, name, ...cellsOf(figures), completenessText(report, code)],
        ...[readings.join(". "), changedText(changed, code)],
      ]),
      ...(ofNone === "" ? [] : [["", "Not of one unit alone", ...columns.map(() => null), "", "", ofNone, "", ""]]),
    ],
    total: ["All units", "", ...cellsOf(total.figures), ofNone, "", changedText(changed, "")],
    marks: [...wards.flatMap(({ figures }, row) => marksOf(figures, row)), ...marksOf(total.figures, null)],
    cautions,
  };
}

function cellsOf(figures: readonly Figure[]): SheetCell[] {
  const found = summary.map(({ key, limits }) => ({ key, limits, figure: figures.find((one) => one.key === key) }));
  const cells = found.flatMap(({ limits, figure }) => [
    figure?.value ?? null,
    ...(limits ? [figure?.lower ?? null, figure?.upper ?? null] : []),
  ]);
  const reasons = found.flatMap(({ key, limits, figure }) => {
    const reason = figure?.reason ?? (limits ? figure?.limitsReason : null) ?? null;
    return reason === null ? [] : [`${figureWords[key].label}: ${reason}`];
  });
  const open = found.flatMap(({ key, figure }) =>
    figure?.open == null ? [] : [`${figureWords[key].label} ${notFinalWords(figure.open)}.`],
  );
  return [...cells, reasons.join(" "), open.join(" ")];
}

/** The words that are printed with figures that cultures could still change. */
function marksOf(figures: readonly Figure[], row: number | null): SheetMark[] {
  return figures.flatMap(({ key, open }) => (open == null ? [] : [{ row, column: key, text: notFinalWords(open) }]));
}

/** Intervals of a figure by ward, in parts that fit a page, around the figure of all wards; none where that is missing. */
function intervals({ wards, total, month }: MonthReport, key: FigureKey): ChartInput[] {
  const { label, unit } = figureWords[key];
  const reference = total.figures.find((one) => one.key === key)?.value ?? null;
  if (reference === null) return [];
  const rows = wards.flatMap(({ code, figures }) => {
    const figure = figures.find((one) => one.key === key);
    if (!figure) return [];
    const { value: estimate, lower, upper, reason, open } = figure;
    return [{ name: code, estimate, lower, upper, reason, ...(open == null ? {} : { open }) }];
  });
  const parts = Array.from({ length: Math.ceil(rows.length / mostRows) }, (_, at) =>
    rows.slice(at * mostRows, (at + 1) * mostRows),
  );
  return parts.map((part, at) => ({
    kind: "intervals",
    input: {
      ...{ id: `${key}-${at + 1}`, title: `${label}, ${month}${parts.length > 1 ? `, part ${at + 1}` : ""}` },
      sentence:
        "Shows each unit's figure with its 95% limits, by unit code; overlapping limits do not separate units, and the order has no meaning.",
      ...{ unit, decimals: key === "rate" ? 2 : 3, scale: "linear", reference, referenceName: "all units", rows: part },
    },
    notes: hollowNotes(part),
  }));
}
