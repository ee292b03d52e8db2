import type { Instant } from "../domain/days/day-number.ts";
import { unindexed } from "./bulk.ts";
import { parametersFor } from "./parameters.ts";
import type { Read } from "./store.ts";

/** Surviving patients by id, each with the hospital's number. */
export type Identifiers = ReadonlyMap<number, string>;

interface OnWards {
  readonly wardIds: readonly number[];
  readonly at: Instant;
  readonly leftSince?: Instant;
}

/**
 * Who was on any of these wards at an instant, or may have had a bed held there during a procedure; with `leftSince` also
 * who left one of them at that earlier instant or later. Asked in parts that are each answered from an index of the ward's
 * stays that leads to few rows, however long the history is.
 */
export async function patientsOnWards(read: Read, facilityId: number, asked: OnWards): Promise<Identifiers> {
  const found = new Map<number, string>();
  for (const part of ["there", "left", "procedure"] as const) {
    const { sql, values } = statement(read, facilityId, { ...asked, part });
    const rows = await read.sql.rows<{ id: number | bigint; identifier: string }>(sql, ...values);
    for (const { id, identifier } of rows) found.set(Number(id), identifier);
  }
  return found;
}

function statement(
  read: Read,
  facilityId: number,
  { wardIds, at, leftSince, part }: OnWards & { readonly part: "there" | "left" | "procedure" },
) {
  const { values, given, instant, ids } = parametersFor(read);
  const until = () => (leftSince === undefined ? `> ${instant(at)}` : `>= ${instant(leftSince)}`);
  const plain = unindexed(read);
  const conditions = [
    `w.ward_id IN ${ids(wardIds)}`,
    ...(part === "there" ? ["w.end_at IS NULL"] : []),
    ...(part === "left" ? [`w.end_at ${until()}`] : []),
    ...(part === "procedure" ? ["w.absence_after = 'procedure'"] : []),
    `${plain}w.start_at <= ${instant(at)}`,
    `w.void_key = 0 AND s.void_key = 0 AND ${plain}s.facility_id = ${given(facilityId, "int")}`,
    `(s.discharged_at IS NULL OR s.discharged_at ${until()})`,
  ];
  const sql = `SELECT q.id, q.identifier
    FROM ward_stay w JOIN stay s ON s.id = w.stay_id JOIN patient p ON p.id = s.patient_id
      JOIN patient q ON q.id = p.survivor_id
    WHERE ${conditions.join(" AND ")}`;
  return { sql, values };
}
