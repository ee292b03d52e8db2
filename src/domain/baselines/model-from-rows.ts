import { type Fault, Problem } from "../../../shared/problems.ts";
import type { BaselineOrigin, ModelBaseline, ModelTerm, TermCategory } from "./baseline.ts";
import { refuseFaultyBaseline } from "./baseline-faults.ts";
import type { TextRow } from "./pooled-from-rows.ts";
import { readNumber } from "./read-number.ts";

/**
 * A model from typed rows or lines, one for each category: `term`, `category`, `from`, `below`, `coefficient`,
 * `standard_error`. The row whose term is `intercept` holds the intercept; a referent has the coefficient 0; `from` and
 * `below` are given for terms of a number. A Problem with every fault at once, each pointing to its row (from 0).
 */
export function modelFromRows(
  origin: BaselineOrigin,
  predicts: ModelBaseline["predicts"],
  rows: readonly TextRow[],
): ModelBaseline {
  const faults: Fault[] = [];
  const blame = (pointer: string, detail: string) => faults.push({ code: "baseline-unusable", pointer, detail });
  const intercepts: number[] = [];
  const terms = new Map<string, TermCategory[]>();
  for (const [at, row] of rows.entries()) {
    const number = (column: string): number | null => {
      const value = readNumber(row[column]);
      if (Number.isNaN(value)) blame(`/rows/${at}/${column}`, `${column} is no number: "${row[column]}".`);
      return value;
    };
    const factor = row.term?.trim() ?? "";
    const coefficient = number("coefficient");
    if (coefficient === null) blame(`/rows/${at}/coefficient`, `${factor} has a row without a coefficient.`);
    if (factor === "intercept") {
      intercepts.push(coefficient ?? Number.NaN);
      continue;
    }
    const [from, below] = [number("from"), number("below")];
    const band = from === null && below === null ? null : { from, below };
    const name = row.category?.trim() ?? "";
    const category = { name, band, coefficient: coefficient ?? Number.NaN, standardError: number("standard_error") };
    terms.set(factor, [...(terms.get(factor) ?? []), category]);
  }
  const [intercept] = intercepts;
  if (intercepts.length > 1) blame("/rows", "The model has more than one intercept.");
  if (intercept === undefined) blame("/rows", "The model has no intercept.");
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
  const list = [...terms].map(([factor, categories]): ModelTerm => ({ factor, categories }));
  const model: ModelBaseline = { kind: "model", origin, predicts, intercept: intercept ?? Number.NaN, terms: list };
  refuseFaultyBaseline(model);
  return model;
}
