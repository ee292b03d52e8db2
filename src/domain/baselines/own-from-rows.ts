import { type Fault, Problem } from "../../../shared/problems.ts";
import type { BaselineOrigin, PooledBaseline } from "./baseline.ts";
import { refuseFaultyBaseline } from "./baseline-faults.ts";
import { earlierPeriod } from "./earlier-period.ts";
import type { TextRow } from "./pooled-from-rows.ts";
import { readNumber } from "./read-number.ts";

const columns = ["infections", "catheter_days", "patient_days"] as const;

/**
 * The counts of wards in an earlier period, from rows: `ward` (its code), `infections` (empty where it was not watched),
 * `catheter_days`, `patient_days`, with an optional `note`. A Problem with every fault at once, each pointing to its row
 * (from 0) and column.
 */
export function ownFromRows(origin: BaselineOrigin, rows: readonly TextRow[]): PooledBaseline {
  const faults: Fault[] = [];
  const counts = rows.map((row, at) => {
    const [infections, catheterDays, patientDays] = columns.map((column) => {
      const value = readNumber(row[column]);
      if (value === null ? column === "infections" : Number.isInteger(value) && value >= 0) return value;
      const detail = `${column} must be a whole number of zero or more, not ${JSON.stringify(row[column] ?? "")}.`;
      faults.push({ code: "baseline-unusable", pointer: `/rates/${at}/${column}`, detail });
      return null;
    }) as [number | null, number | null, number | null];
    const ward = row.ward?.trim() ?? "";
    return { ward, infections, catheterDays: catheterDays ?? 0, patientDays: patientDays ?? 0 };
  });
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
  const baseline = earlierPeriod(origin, counts);
  refuseFaultyBaseline(baseline);
  return baseline;
}
