import type { Read } from "./store.ts";

/** What leads to a patient: one of its entries, or its own id. */
export type PatientKey =
  | { patientId: number }
  | { stayId: number }
  | { wardStayId: number }
  | { catheterId: number }
  | { noteId: number }
  | { specimenId: number }
  | { signId: number }
  | { findingId: number }
  /** A determined culture: its urine specimen, or its finding in urine. */
  | { caseId: number };

/** The patient of an entry of each kind, by the entry's number. */
const owners = {
  stayId: "SELECT patient_id AS id FROM stay WHERE id = $1",
  wardStayId: "SELECT s.patient_id AS id FROM ward_stay e JOIN stay s ON s.id = e.stay_id WHERE e.id = $1",
  catheterId: "SELECT s.patient_id AS id FROM catheter e JOIN stay s ON s.id = e.stay_id WHERE e.id = $1",
  noteId: `SELECT s.patient_id AS id FROM catheter_note e JOIN catheter c ON c.id = e.catheter_id
             JOIN stay s ON s.id = c.stay_id WHERE e.id = $1`,
  specimenId: "SELECT patient_id AS id FROM specimen WHERE id = $1",
  signId: "SELECT patient_id AS id FROM sign WHERE id = $1",
  findingId: "SELECT patient_id AS id FROM finding WHERE id = $1",
  caseId: `SELECT patient_id AS id FROM specimen WHERE id = $1
           UNION ALL SELECT patient_id FROM finding WHERE id = $1`,
} as const;

/** The patient for whom an entry was recorded, of whatever facility; null when there is no such entry. */
export async function patientIdOf({ sql }: Pick<Read, "sql">, key: PatientKey): Promise<number | null> {
  if ("patientId" in key) return key.patientId;
  for (const [name, id] of Object.entries(key)) {
    const [owner] = await sql.rows<{ id: number | bigint }>(owners[name as keyof typeof owners], id);
    return owner === undefined ? null : Number(owner.id);
  }
  throw new Error("a key that leads to a patient names no entry");
}
