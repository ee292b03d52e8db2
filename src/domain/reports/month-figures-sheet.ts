import { figureWords, notFinalWords } from "../../../shared/figure-words.ts";
import type { CompletenessItem, Figure, MonthReport, WardFigures } from "../../../shared/month-report.ts";
import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import type { ChangedRow } from "./changes-after-signing.ts";
import { reasonsOf } from "./completeness-sheet.ts";

const text = (key: string, label: string): SheetColumn => ({ key, label, kind: "text", unit: null });
const amount = (key: string, label: string): SheetColumn => ({
  key,
  label,
  kind: "amount",
  unit: "as its figure says",
});

const columns: SheetColumn[] = [
  text("ward", "Unit"),
  text("name", "Name"),
  text("figure", "Figure"),
  text("label", "Figure in words"),
  amount("value", "Value"),
  text("unit", "Unit"),
  amount("numerator", "Numerator"),
  amount("denominator", "Denominator"),
  amount("lower", "Lower limit"),
  amount("upper", "Upper limit"),
  amount("p", "p value"),
  text("method", "Method"),
  text("reason", "Why there is no value"),
  text("limits_reason", "Why a limit is missing"),
  text("not_final", "Not final"),
  text("non_default_readings", "Non-default readings"),
  ...[text("signed", "Signed"), text("present", "Present"), text("changed_entry", "Changed entry")],
  ...[text("changed_by", "Changed by"), text("changed_at", "Changed at")],
];

/**
 * A month's figures as rows, one for each ward and figure, those of all wards together last; nothing is rounded. Below
 * them what is missing or doubtful, and what changed after signing.
 */
export function monthFiguresSheet(report: MonthReport, changed: readonly ChangedRow[] = []): Sheet {
  const rows = [
    ...report.wards.flatMap((ward) => ward.figures.map((figure) => rowOf(ward, figure))),
    ...report.total.figures.map((figure) => rowOf(allOf(report), figure)),
    ...(report.completeness ?? []).flatMap(completenessRows),
    ...changed.map(changedRow),
  ];
  return {
    id: "month-figures",
    title: `Figures of the month, ${report.facility}`,
    period: `${report.first} to ${report.last}`,
    asOf: report.asOf,
    sources: report.sources,
    columns,
    rows,
    marks: [...report.wards.flatMap(({ figures }) => figures), ...report.total.figures].flatMap(({ open }, row) =>
      open == null ? [] : [{ row, column: "value", text: notFinalWords(open) }],
    ),
    total: null,
    cautions: report.cautions,
  };
}

/** What is missing or doubtful, under its kind in place of a figure; a row for each dropped line with the reason. */
function completenessRows(item: CompletenessItem): SheetCell[][] {
  const { ward, kind, sentence, count } = item;
  const row = (label: string, value: number | null, reason: string | null): SheetCell[] => [
    ...[ward ?? "", "", kind, label, value, "items"],
    ...[null, null, null, null, null, null, reason, null, "", "", ...unchanged],
  ];
  return [row(sentence, count, null), ...reasonsOf(item).map((said) => row("Dropped line", null, said))];
}

const unchanged: readonly SheetCell[] = [null, null, "", "", ""];

/** A change under its own word in place of a figure, so that it is not added to the figures. */
function changedRow({ unit, figure, signed, present, what, entry, who, when }: ChangedRow): SheetCell[] {
  return [
    ...[unit, "", "changed-after-signing", figure, null, ""],
    ...[null, null, null, null, null, null, what, null, "", ""],
    ...[signed, present, entry, who, when],
  ];
}

type Of = Pick<WardFigures, "code" | "name" | "nonDefaultReadings">;

/** All wards together rest on every reading of theirs. */
function allOf({ wards }: MonthReport): Of {
  const readings = [...new Set(wards.flatMap(({ nonDefaultReadings = [] }) => nonDefaultReadings))];
  return { code: "", name: "All units shown", nonDefaultReadings: readings };
}

function rowOf({ code, name, nonDefaultReadings = [] }: Of, figure: Figure): SheetCell[] {
  const { key, value, numerator, denominator, lower, upper, p, method, reason, limitsReason, open } = figure;
  const { label, unit } = figureWords[key];
  const numbers = [numerator, denominator, lower, upper, p];
  const notFinal = open == null ? "" : notFinalWords(open);
  const said = [method, reason, limitsReason, notFinal, nonDefaultReadings.join(". ")];
  return [code, name, key, label, value, unit, ...numbers, ...said, ...unchanged];
}
