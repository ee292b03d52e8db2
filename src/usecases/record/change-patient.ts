import type { AuditAction } from "../../../shared/audit-words.ts";
import type { PatientTimeline } from "../../domain/timeline/timeline.ts";
import { writeAudit } from "../../store/audit.ts";
import type { PatientKey } from "../../store/patient-of-entry.ts";
import { lockPatient } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { loadTimeline } from "../../store/timelines.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { sameVersion } from "../same-version.ts";
import { storeChanges } from "../store-change.ts";
import { findSubject, type Subject, versionOf } from "./entry-state.ts";

/** The version that an entry has after a change. */
export interface Versioned {
  readonly version: number;
}

export interface PatientChange<T> {
  readonly action: AuditAction;
  /** What leads to the patient. */
  readonly key: PatientKey;
  /** Ids and the like for the audit trail; never what a patient could be known by. */
  readonly details: object;
  readonly reason?: string;
  /** The entry that is changed: its version must be the one that the person saw, and the new one is answered. */
  readonly subject?: Subject;
  /** Checks that need the database, before anything is decided. */
  readonly first?: (tx: Tx) => Promise<unknown>;
  /** The decision: a pure function of what is recorded. */
  readonly decide: (timeline: PatientTimeline, newId: () => number) => { timeline: PatientTimeline; answer: T };
}

/**
 * The one way in which a patient's record is changed: lock, load, decide, store, post to the ledger, write the audit
 * entry, in one transaction.
 */
export function changePatient<T>(
  act: Act,
  change: PatientChange<T> & { readonly subject: Subject },
): Promise<T & Versioned>;
export function changePatient<T>(act: Act, change: PatientChange<T>): Promise<T>;
export function changePatient<T>(act: Act, change: PatientChange<T>): Promise<T> {
  return act.store.tx((tx) => changePatientIn(tx, act, change));
}

/** {@link changePatient} inside a transaction that has more to do. */
export async function changePatientIn<T>(tx: Tx, act: Act, change: PatientChange<T>): Promise<T> {
  const by = { ...recording(act), ...(change.reason === undefined ? {} : { reason: change.reason }) };
  const patient = await lockPatient(tx, by.facilityId, change.key);
  await change.first?.(tx);
  const before = await loadTimeline(tx, patient.id);
  const { action, details, reason, subject } = change;
  if (subject) checkSubject(before, subject);
  const { timeline: after, answer: decided } = change.decide(before, () => tx.newId());
  await storeChanges(tx, by, [{ before, after }]);
  await determineAgain(tx, by, { patientIds: [patient.id], cause: action });
  const answer = subject ? { ...decided, version: versionOf(after, subject) } : decided;
  await writeAudit(tx, by, { action, patientIds: [patient.id], details: { ...details, ...answer, reason } });
  return answer;
}

function checkSubject(timeline: PatientTimeline, subject: Subject): void {
  const { entry, current } = findSubject(timeline, subject);
  sameVersion(entry, subject.seenVersion, current);
}
