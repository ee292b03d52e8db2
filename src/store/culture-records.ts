import type { CultureRecord } from "../domain/cultures/surveillance-of.ts";
import { idList } from "./bulk.ts";
import { findingsOf } from "./findings.ts";
import { survivorIdsOf } from "./patients.ts";
import { signsOf } from "./signs.ts";
import { specimensOf } from "./specimens.ts";
import type { Read } from "./store.ts";
import { loadTimelines } from "./timelines.ts";

/** A surviving patient's whole record, as determinations need it. */
export interface PatientRecord extends CultureRecord {
  readonly patientId: number;
  readonly identifier: string;
}

/** The records of these surviving patients, in the order of ids. */
export async function cultureRecords(read: Read, survivorIds: readonly number[]): Promise<PatientRecord[]> {
  if (survivorIds.length === 0) return [];
  const timelines = await loadTimelines(read, survivorIds);
  const specimens = await specimensOf(read, survivorIds);
  const signs = await signsOf(read, survivorIds);
  const findings = await findingsOf(read, survivorIds);
  const entries = [...specimens, ...signs, ...findings];
  const survivors = await survivorIdsOf(read, [...new Set(entries.map(({ patientId }) => patientId))]);
  const patients = await patientRows(read, survivorIds);
  return patients.map(({ id, identifier, birthDay }) => {
    const own = (entry: { readonly patientId: number }) => survivors.get(entry.patientId) === id;
    return {
      ...{ patientId: id, identifier, birthDay },
      timeline: timelines.get(id) ?? { patientId: id, stays: [] },
      specimens: specimens.filter(own),
      signs: signs.filter(own),
      findings: findings.filter(own),
    };
  });
}

async function patientRows(read: Read, ids: readonly number[]) {
  const rows = await read.sql.rows<{ id: number | bigint; identifier: string; birth_day: number | bigint | null }>(
    `SELECT id, identifier, birth_day FROM patient WHERE id IN ${idList(read, 1)} ORDER BY id`,
    JSON.stringify(ids),
  );
  return rows.map(({ id, identifier, birth_day: birthDay }) => ({
    ...{ id: Number(id), identifier },
    birthDay: birthDay === null ? null : Number(birthDay),
  }));
}

/** Those of these surviving patients of whom a urine specimen or a finding was ever recorded, in the order of ids. */
export async function patientsWithCultures(read: Read, survivorIds: readonly number[]): Promise<number[]> {
  if (survivorIds.length === 0) return [];
  const rows = await read.sql.rows<{ id: number | bigint }>(
    `SELECT DISTINCT p.survivor_id AS id FROM patient p WHERE p.survivor_id IN ${idList(read, 1)} AND (
       EXISTS (SELECT 1 FROM specimen m WHERE m.patient_id = p.id AND m.kind = 'urine')
       OR EXISTS (SELECT 1 FROM finding f WHERE f.patient_id = p.id)) ORDER BY 1`,
    JSON.stringify(survivorIds),
  );
  return rows.map(({ id }) => Number(id));
}
