import type { Read } from "./store.ts";

/** Ids of patients of a facility after `after`, merged ones too, in order. */
export async function patientPage(read: Read, facilityId: number, after: number, count: number): Promise<number[]> {
  const p = (n: number) => (read.kind === "sqlite" ? `$${n}` : `$${n}::int`);
  // The sign keeps SQLite from the index of the facility: it would sort all its patients again for every page.
  const rows = await read.sql.rows<{ id: number | bigint }>(
    `SELECT id FROM patient WHERE +facility_id = ${p(1)} AND id > ${p(2)} ORDER BY id LIMIT ${p(3)}`,
    facilityId,
    after,
    count,
  );
  return rows.map((row) => Number(row.id));
}
