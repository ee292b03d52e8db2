import type { Instant } from "../../src/domain/days/day-number.ts";
import type { Act } from "../../src/usecases/act.ts";
import { recordFinding } from "../../src/usecases/cultures/record-finding.ts";
import { recordSigns } from "../../src/usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../../src/usecases/cultures/record-specimen.ts";
import { receiveImport } from "../../src/usecases/imports/receive-import.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { writeNote } from "../../src/usecases/record/write-note.ts";
import { findPerson } from "../../src/usecases/settings/find-person.ts";
import { type AlderBay, lookedAt } from "./alder-bay.ts";
import { movesWithFault } from "./import-work.ts";
import type { Subjects } from "./subjects.ts";

/** Where a record can lie, seen from people of ward 3E. */
export interface Situations {
  readonly "own ward": Subjects;
  readonly "other ward": Subjects;
  readonly "moved out today": Subjects;
  readonly "moved out long ago": Subjects;
  readonly "discharged today": Subjects;
  readonly "discharged long ago": Subjects;
  readonly "other facility": Subjects;
  /** Nothing has these numbers. */
  readonly absent: Subjects;
}

const hourMs = 3_600_000;
const today = lookedAt - 5 * hourMs;
const longAgo = lookedAt - 96 * hourMs;
const arrival = lookedAt - 200 * hourMs;

let made = 0;
/** Names that nobody has yet. */
export const fresh = () => `NEW-${++made}`;

/** Makes a patient for each situation; all were admitted eight days before they are looked at. */
export async function situationsIn(hospital: AlderBay): Promise<Situations> {
  const { wards, people, store } = hospital;
  const actor = await findPerson(store, people.prevention);
  const outsider = await findPerson(store, people.elsewhere);
  if (!actor || !outsider) throw new Error("the hospital has nobody");
  const act: Act = { store, actor, now: lookedAt };
  const [own, other] = [wards["3E"], wards["4N"]];
  const gone = async (wardId: number, at: Instant) => {
    const about = await patientOn(act, wardId, other);
    await dischargePatient(act, { stayId: about.stayId, dischargedAt: at });
    return { ...about, wardId };
  };
  const moved = async (at: Instant) => {
    const about = await patientOn(act, own, other);
    await movePatient(act, { stayId: about.stayId, movedAt: at, wardId: other });
    return about;
  };
  const elsewhere = await patientOn({ ...act, actor: outsider }, hospital.elsewhereWardId, hospital.elsewhereWardId);
  const none = unknownId;
  const nothing = {
    ...{ patientId: none, stayId: none, wardStayId: none, catheterId: none, noteId: none, wardId: none },
    ...{ importId: none, scopeId: none, sourceId: none, specimenId: none, signId: none, findingId: none, caseId: none },
    ...{ noneFoundId: none, aliasId: none },
  };
  return {
    "own ward": await patientOn(act, own, other),
    "other ward": await patientOn(act, other, own),
    "moved out today": await moved(today),
    "moved out long ago": { ...(await moved(longAgo)), wardId: other },
    "discharged today": await gone(own, today),
    "discharged long ago": { ...(await gone(own, longAgo)), wardId: other },
    "other facility": elsewhere,
    absent: { ...elsewhere, ...nothing },
  };
}

/** A number that no record has. */
const unknownId = 2_000_000_001;

/** A patient on a ward with a catheter and a note about it. */
async function patientOn(act: Act, wardId: number, toWardId: number): Promise<Subjects> {
  const admit = () =>
    admitPatient(act, { patient: { identifier: fresh() }, number: fresh(), admittedAt: arrival, wardId });
  const { patientId, stayId, wardStayId } = await admit();
  const other = await admit();
  const insertedAt = arrival + hourMs;
  const insertion = { stayId, kind: "indwelling-urethral", inPlaceOnArrival: false, insertedAt } as const;
  const { catheterId } = await insertCatheter(act, insertion);
  const { noteId } = await writeNote(act, { catheterId, kind: "confirmation", at: arrival + 2 * hourMs });
  const at = new Date(arrival + 3 * hourMs).toISOString();
  const subjects = { wardId, toWardId, patientId, otherPatientId: other.patientId, stayId, wardStayId };
  const files = [{ name: "moves.csv", text: movesWithFault(fresh) }];
  const { importId } = await receiveImport(act, { files });
  // Of the day on which they are looked at: a ward that was not one for inpatients on the arrival may be one by now.
  const collectedAt = lookedAt - hourMs;
  const specimen = { patientId, kind: "urine", collectedAt, method: "culture", status: "pending" } as const;
  const { specimenId } = await recordSpecimen(act, { ...specimen, organisms: [] });
  const found = { patientId, finding: "pyuria", day: Math.floor(collectedAt / 86_400_000), present: true } as const;
  const { findingId } = await recordFinding(act, found);
  const signs = [{ sign: "dysuria", finding: "absent" }] as const;
  const { signIds } = await recordSigns(act, { patientId, day: Math.floor(collectedAt / 86_400_000), signs });
  return {
    ...subjects,
    catheterId,
    noteId,
    importId,
    scopeId: unknownId,
    sourceId: unknownId,
    aliasId: unknownId,
    specimenId,
    signId: signIds[0] ?? 0,
    findingId,
    caseId: specimenId,
    noneFoundId: unknownId,
    at,
    fresh,
  };
}
