import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import type { FigureChange } from "../../../shared/signed-changes.ts";
import type { MonthDifference } from "./month-differences.ts";

/** An act that changed figures of a month after it was signed, in words. */
export interface ChangeInWords {
  /** What was done. */
  readonly what: string;
  /** What it is about, such as `case 12`; empty for nothing of its own, or for people who may not open it. */
  readonly entry: string;
  readonly who: string;
  /** As ISO text, in UTC. */
  readonly when: string;
  /** Before and after it; none where it was not compared. */
  readonly figures: readonly FigureChange[];
}

/** What is no longer as a month was signed, and the acts that made it so, of the units within reach. */
export interface ChangedAfterSigning {
  readonly differences: readonly MonthDifference[];
  /** Only those since the latest signature. */
  readonly changes: readonly ChangeInWords[];
}

/** One figure that an act changed: what was signed, and what it is now. */
export interface ChangedRow extends Omit<ChangeInWords, "figures"> {
  /** Empty: all units together, or the month as a whole. */
  readonly unit: string;
  /** In words, or why there is none. */
  readonly figure: string;
  readonly signed: SheetCell;
  readonly present: SheetCell;
}

const unlinked = { what: "No single entry: see the differences", entry: "", who: "", when: "" } as const;

/** Each changed figure with the act that changed it, the latest act first. */
export function changedRows({ differences, changes }: ChangedAfterSigning): ChangedRow[] {
  const keyOf = ({ ward, what }: Pick<MonthDifference, "ward" | "what">) => JSON.stringify([ward, what]);
  const now = new Map(differences.map((one) => [keyOf(one), one]));
  const linked = new Set<string>();
  const rows = changes.flatMap(({ figures, ...act }): ChangedRow[] => {
    const found = figures.flatMap((one) => now.get(keyOf(one)) ?? []);
    for (const one of found) linked.add(keyOf(one));
    if (found.length > 0) return found.map((one) => rowOf(act, one));
    const figure = figures.length === 0 ? "Not compared: the change touches many months" : "As signed again";
    return [{ ...act, unit: "", figure, signed: null, present: null }];
  });
  return [...rows, ...differences.filter((one) => !linked.has(keyOf(one))).map((one) => rowOf(unlinked, one))];
}

function rowOf(act: Omit<ChangeInWords, "figures">, { ward, what, signed, now }: MonthDifference): ChangedRow {
  return { ...act, unit: ward ?? "", figure: what, signed, present: now };
}

const text = (key: string, label: string): SheetColumn => ({ key, label, kind: "text", unit: null });

const columns: SheetColumn[] = [
  ...[text("unit", "Unit"), text("figure", "Figure"), text("signed", "Signed"), text("present", "Present")],
  ...[
    text("change", "Change"),
    text("entry", "Entry"),
    text("changed_by", "Changed by"),
    text("changed_at", "Changed at"),
  ],
];

/** The changes after signing as a sheet of their own; null where nothing changed. */
export function changesSheet(
  rows: readonly ChangedRow[],
  {
    facility,
    first,
    last,
    asOf,
    sources,
  }: Pick<Sheet, "asOf" | "sources"> & Record<"facility" | "first" | "last", string>,
): Sheet | null {
  if (rows.length === 0) return null;
  return {
    ...{
      id: "month-changes",
      title: "Changed after signing",
      period: `${first} to ${last}, ${facility}`,
      asOf,
      sources,
    },
    columns,
    rows: rows.map(({ unit, figure, signed, present, what, entry, who, when }) => [
      ...[unit, figure, signed, present, what, entry, who, when],
    ]),
    total: null,
    cautions: [],
  };
}

/** The changes of one unit, or of none alone (empty), in one text. */
export function changedText(rows: readonly ChangedRow[], unit: string): string {
  return rows
    .filter((row) => row.unit === unit)
    .map((row) => {
      const { figure, signed, present } = row;
      const values =
        signed === null && present === null ? "" : `: signed ${signed ?? "none"}, present ${present ?? "none"}`;
      return `${figure}${values}. ${actText(row)}`;
    })
    .join(" ");
}

function actText({ what, entry, who, when }: Pick<ChangedRow, "what" | "entry" | "who" | "when">): string {
  return `${[what, entry, who, when === "" ? "" : `${when.slice(0, 16).replace("T", " ")} UTC`].filter((one) => one !== "").join(", ")}.`;
}
