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

const ofPatient = { select: { patientId: true } } as const;
const ofStay = { select: { stay: ofPatient } } as const;

/** The patient for whom an entry was recorded, of whatever facility; null when there is no such entry. */
export async function patientIdOf({ db }: Read, key: PatientKey): Promise<number | null> {
  if ("patientId" in key) return key.patientId;
  const entry = await ownerOf(db, key);
  return entry?.patientId ?? null;
}

type EntryKey = Exclude<PatientKey, { patientId: number }>;

async function ownerOf(db: Read["db"], key: EntryKey): Promise<{ patientId: number } | null | undefined> {
  if ("stayId" in key) return db.stay.findUnique({ where: { id: key.stayId }, ...ofPatient });
  if ("wardStayId" in key) return (await db.wardStay.findUnique({ where: { id: key.wardStayId }, ...ofStay }))?.stay;
  if ("catheterId" in key) return (await db.catheter.findUnique({ where: { id: key.catheterId }, ...ofStay }))?.stay;
  if ("noteId" in key) {
    const note = await db.catheterNote.findUnique({ where: { id: key.noteId }, select: { catheter: ofStay } });
    return note?.catheter.stay;
  }
  if ("specimenId" in key) return db.specimen.findUnique({ where: { id: key.specimenId }, ...ofPatient });
  if ("signId" in key) return db.sign.findUnique({ where: { id: key.signId }, ...ofPatient });
  if ("findingId" in key) return db.finding.findUnique({ where: { id: key.findingId }, ...ofPatient });
  const specimen = await db.specimen.findUnique({ where: { id: key.caseId }, ...ofPatient });
  return specimen ?? db.finding.findUnique({ where: { id: key.caseId }, ...ofPatient });
}
