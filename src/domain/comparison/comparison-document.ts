import type { ChartInput } from "../../../shared/chart-input.ts";
import { notFinalWords } from "../../../shared/figure-words.ts";
import type { ReportDocument } from "../../../shared/report-document.ts";
import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import { dayText } from "../days/day-number.ts";
import { monthDays } from "../days/month.ts";
import { cautionsOf, chartsOf, comparisonSources } from "./compare-wards.ts";
import { type ComparisonFacts, periodText, totalsOf, withoutRate } from "./comparison-facts.ts";

/** A figure with its limits; null is missing. */
export interface LimitedFigure {
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

const rate = { kind: "rate", unit: "CAUTIs per 1,000 catheter-days" } as const;
const ratio = { kind: "ratio", unit: "catheter-days per patient-day" } as const;
const columns: SheetColumn[] = [
  { key: "ward", label: "Unit", kind: "text", unit: null },
  { key: "name", label: "Name", kind: "text", unit: null },
  { key: "type", label: "Type", kind: "text", unit: null },
  { key: "patient_days", label: "Patient-days", kind: "whole", unit: "patient-days" },
  { key: "catheter_days", label: "Catheter-days", kind: "whole", unit: "catheter-days" },
  { key: "watched_days", label: "Catheter-days of months under surveillance", kind: "whole", unit: "catheter-days" },
  { key: "infections", label: "CAUTIs", kind: "whole", unit: "infections" },
  { key: "rate", label: "CAUTI rate", ...rate },
  { key: "rate_lower", label: "CAUTI rate, lower limit", ...rate },
  { key: "rate_upper", label: "CAUTI rate, upper limit", ...rate },
  { key: "utilization", label: "Device utilization ratio", ...ratio },
  { key: "utilization_lower", label: "Utilization, lower limit", ...ratio },
  { key: "utilization_upper", label: "Utilization, upper limit", ...ratio },
  { key: "note", label: "Note", kind: "text", unit: null },
  { key: "not_final", label: "Not final", kind: "text", unit: null },
];

/** A comparison as a document: what is compared, every chart, and the figures of the wards by their codes. */
export function comparisonDocument(
  facts: ComparisonFacts,
  figures: readonly { readonly rate: LimitedFigure; readonly utilization: LimitedFigure }[],
): ReportDocument {
  const { facility, months, asOf, type, chosen } = facts;
  const period = periodText(months);
  const cautions = cautionsOf(facts);
  return {
    title: `${facility.name}: units compared, ${period}`,
    cover: [
      { label: "Facility", text: facility.name },
      { label: "Period", text: daysOf(facts) },
      { label: "Data as of", text: `${new Date(asOf).toISOString()} (UTC)` },
      { label: "Units", text: type === null ? "Inpatient units of every type" : `Inpatient units of the type ${type}` },
      ...(chosen ? [{ label: "Looked at closer", text: chosen.code }] : []),
    ],
    sheets: [sheetOf(facts, figures, cautions)],
    charts: chartsOf(facts).map(withPrintedTitle),
    ...{ cautions, sources: comparisonSources },
  };
}

function daysOf({ months }: ComparisonFacts): string {
  const [first, last] = [months[0], months.at(-1)];
  if (first === undefined || last === undefined) throw new Error("a comparison has no month");
  return `${dayText(monthDays(first).first)} to ${dayText(monthDays(last).last)}`;
}

/** On paper nobody chooses a ward. */
function withPrintedTitle(chart: ChartInput): ChartInput {
  return { ...chart, notes: chart.notes.map((note) => note.replace(" Choose a unit to see it.", "")) };
}

function sheetOf(
  facts: ComparisonFacts,
  figures: readonly { readonly rate: LimitedFigure; readonly utilization: LimitedFigure }[],
  cautions: readonly string[],
): Sheet {
  const rows = facts.wards.map((ward, at): SheetCell[] => {
    const totals = totalsOf(ward.months);
    const cells = (figure: LimitedFigure | undefined) => [
      ...[figure?.value ?? null, figure?.lower ?? null, figure?.upper ?? null],
    ];
    const { patientDays, catheterDays, watchedDays, infections } = totals;
    return [
      ...[ward.code, ward.name, ward.type ?? "type not given", patientDays, catheterDays, watchedDays, infections],
      ...[...cells(figures[at]?.rate), ...cells(figures[at]?.utilization)],
      [...ward.notes, withoutRate(totals) ?? ""].join(" ").trim(),
      totals.open === 0 ? "" : notFinalWords(totals.open),
    ];
  });
  const marks = facts.wards.flatMap(({ months }, row) => {
    const { open } = totalsOf(months);
    const text = notFinalWords(open);
    return open === 0 ? [] : ["infections", "rate"].map((column) => ({ row, column, text }));
  });
  return {
    ...{
      id: "ward-comparison",
      title: "Figures of the units",
      period: daysOf(facts),
      columns,
      rows,
      total: null,
      marks,
    },
    ...{ asOf: new Date(facts.asOf).toISOString(), sources: comparisonSources, cautions: [...cautions] },
  };
}
