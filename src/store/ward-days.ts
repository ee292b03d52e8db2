import type { DayNumber } from "../domain/days/day-number.ts";
import { idList } from "./bulk.ts";
import type { Read } from "./store.ts";

/** Patient-days and catheter-days of a ward, on one day or over several. */
export interface WardSum {
  readonly wardId: number;
  readonly patientDays: number;
  readonly catheterDays: number;
}

export interface WardDaySum extends WardSum {
  readonly day: DayNumber;
}

export interface DayRange {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

interface RawSum {
  ward_id: number | bigint;
  day: number | bigint;
  patients: number | bigint;
  catheters: number | bigint;
}

/** What the ledger says of these wards from `first` to `last`, summed by ward. Wards without rows are left out. */
export async function ledgerByWard(read: Read, wardIds: readonly number[], days: DayRange): Promise<WardSum[]> {
  return (await ledgerSums(read, "ward_id, 0 AS day", { wardIds, days, by: "ward_id" })).map(sumFrom);
}

/** What the ledger says of these wards from `first` to `last`, by ward and day. Empty days are left out. */
export async function ledgerByDay(read: Read, wardIds: readonly number[], days: DayRange): Promise<WardDaySum[]> {
  const rows = await ledgerSums(read, "ward_id, day", { wardIds, days, by: "ward_id, day" });
  return rows.map((row) => ({ ...sumFrom(row), day: Number(row.day) }));
}

function sumFrom(row: RawSum): WardSum {
  return {
    wardId: Number(row.ward_id),
    patientDays: Number(row.patients),
    catheterDays: Number(row.catheters),
  };
}

function ledgerSums(
  read: Read,
  columns: string,
  { wardIds, days, by }: { wardIds: readonly number[]; days: DayRange; by: string },
): Promise<RawSum[]> {
  const p = (n: number) => (read.kind === "sqlite" ? `$${n}` : `$${n}::int`);
  const catheters = read.kind === "sqlite" ? "sum(catheter)" : "count(*) FILTER (WHERE catheter)";
  return read.sql.rows<RawSum>(
    `SELECT ${columns}, count(*) AS patients, ${catheters} AS catheters FROM patient_day
     WHERE ward_id IN ${idList(read, 1)} AND day >= ${p(2)} AND day <= ${p(3)} GROUP BY ${by} ORDER BY ${by}`,
    JSON.stringify(wardIds),
    days.first,
    days.last,
  );
}

/** One row of the ledger with the patient it belongs to. */
export interface WardDayPatient {
  readonly patientId: number;
  readonly identifier: string;
  readonly stayId: number;
  readonly catheter: boolean;
}

/** The ledger rows of a ward on a day, with their patients. */
export async function ledgerPatients(read: Read, wardId: number, day: DayNumber): Promise<WardDayPatient[]> {
  const rows = await read.db.patientDay.findMany({
    where: { wardId, day },
    select: { patientId: true, stayId: true, catheter: true, patient: { select: { identifier: true } } },
  });
  return rows.map(({ patient, ...row }) => ({ ...row, identifier: patient.identifier }));
}

/** The first and the last day that the ledger holds for these wards; null when it is empty. */
export async function ledgerSpan(read: Read, wardIds: readonly number[]): Promise<DayRange | null> {
  const { _min, _max } = await read.db.patientDay.aggregate({
    where: { wardId: { in: [...wardIds] } },
    _min: { day: true },
    _max: { day: true },
  });
  return _min.day === null || _max.day === null ? null : { first: _min.day, last: _max.day };
}
