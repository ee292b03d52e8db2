import { gapWords } from "../../../shared/gap-words.ts";
import type { CompletenessItem, MonthReport } from "../../../shared/month-report.ts";
import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";

const text = (key: string, label: string): SheetColumn => ({ key, label, kind: "text", unit: null });

const columns: SheetColumn[] = [
  text("unit", "Unit"),
  text("item", "Item"),
  { key: "count", label: "Count", kind: "whole", unit: "items" },
  text("blocks", "Signing"),
  text("says", "What is missing or doubtful"),
];

/** What was missing from a month or doubtful in it as rows, each dropped line with its reason; null for months without. */
export function completenessSheet(report: MonthReport): Sheet | null {
  const { completeness, facility, first, last, asOf, sources } = report;
  if (completeness === null) return null;
  return {
    ...{ id: "month-completeness", title: "Data quality", period: `${first} to ${last}, ${facility}`, asOf, sources },
    columns,
    rows: completeness.flatMap((item) => [rowOf(item), ...reasonsOf(item).map((said) => ["", "", null, "", said])]),
    total: null,
    cautions: [],
  };
}

function rowOf({ ward, kind, count, sentence }: CompletenessItem): SheetCell[] {
  const blocks = Object.entries(gapWords).some(([key, words]) => key === kind && words.blocks);
  return [ward ?? "", kind, count, blocks ? "to resolve before signing" : "does not block signing", sentence];
}

/** A sentence for each dropped line of an item: file, line, reason, who and when, and nothing of what the line says. */
export function reasonsOf({ lines }: Pick<CompletenessItem, "lines">): string[] {
  return lines.flatMap(({ importId, file, line, reason, by, at }) =>
    reason === null
      ? []
      : [
          `Dropped: ${file} line ${line} of import ${importId}: ${reason} (${by ?? "unknown"}, ${at === null ? "no date" : `${at.slice(0, 16).replace("T", " ")} UTC`})`,
        ],
  );
}

/** What is missing or doubtful in one text, of a unit, or of none alone (null). */
export function completenessText({ completeness }: Pick<MonthReport, "completeness">, ward: string | null): string {
  const own = (completeness ?? []).filter((item) => item.ward === ward);
  return own.flatMap((item) => [item.sentence, ...reasonsOf(item)]).join(" ");
}
