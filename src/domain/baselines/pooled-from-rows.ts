import { type Fault, Problem } from "../../../shared/problems.ts";
import type { BaselineOrigin, PooledBaseline, PooledRate } from "./baseline.ts";
import { refuseFaultyBaseline } from "./baseline-faults.ts";
import { readNumber } from "./read-number.ts";

/** One typed row, or one line of a file: values as text by the name of their column. */
export type TextRow = Readonly<Record<string, string>>;

const columns = ["infections", "catheter_days", "patient_days", "rate_per_1000", "utilization"] as const;

/**
 * Pooled rates by ward type from typed rows or lines: `ward_type`, and either counts (`infections`, `catheter_days`,
 * `patient_days`) or printed figures (`rate_per_1000`, `utilization`), with an optional `note`. Counts win over printed
 * figures, which are rounded. A Problem with every fault at once, each pointing to its row (from 0) and column.
 */
export function pooledFromRows(origin: BaselineOrigin, rows: readonly TextRow[]): PooledBaseline {
  const faults: Fault[] = [];
  const rates = rows.map((row, at): PooledRate => {
    const [infections, catheterDays, patientDays, rate, utilization] = columns.map((column) => {
      const value = readNumber(row[column]);
      if (value === null || value >= 0) return value;
      const detail = `${column} must be a number of zero or more, not "${row[column]}".`;
      faults.push({ code: "baseline-unusable", pointer: `/rates/${at}/${column}`, detail });
      return null;
    }) as [number | null, number | null, number | null, number | null, number | null];
    const quotient = (part: number | null, whole: number | null) =>
      part === null || whole === null || whole === 0 ? null : part / whole;
    return {
      key: row.ward_type?.trim() ?? "",
      infectionsPerCatheterDay: quotient(infections, catheterDays) ?? quotient(rate, 1_000),
      utilization: quotient(catheterDays, patientDays) ?? utilization,
      note: row.note?.trim() || null,
    };
  });
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
  const baseline: PooledBaseline = { kind: "pooled", origin, by: "ward-type", rates };
  refuseFaultyBaseline(baseline);
  return baseline;
}
