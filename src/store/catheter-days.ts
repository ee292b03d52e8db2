import type { DayNumber } from "../domain/days/day-number.ts";
import { idList } from "./bulk.ts";
import type { Read } from "./store.ts";
import type { DayRange } from "./ward-days.ts";

/** One catheter-day of the ledger. */
export interface LedgerCatheterDay {
  readonly wardId: number;
  readonly patientId: number;
  readonly day: DayNumber;
}

/** The catheter-days that the ledger has for these wards, from `first` to `last`. */
export async function ledgerCatheterDays(
  read: Read,
  wardIds: readonly number[],
  { first, last }: DayRange,
): Promise<LedgerCatheterDay[]> {
  const p = (n: number) => (read.kind === "sqlite" ? `$${n}` : `$${n}::int`);
  const rows = await read.sql.rows<{ ward_id: number; patient_id: number; day: number }>(
    `SELECT ward_id, patient_id, day FROM patient_day
     WHERE ward_id IN ${idList(read, 1)} AND day >= ${p(2)} AND day <= ${p(3)} AND catheter`,
    JSON.stringify(wardIds),
    first,
    last,
  );
  return rows.map((row) => ({ wardId: Number(row.ward_id), patientId: Number(row.patient_id), day: Number(row.day) }));
}
