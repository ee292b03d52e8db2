import type { AuditAction } from "../../../shared/audit-words.ts";
import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import { acceptedDays, dayFaults } from "../../domain/cultures/accepted-days.ts";
import type { LaboratoryWords } from "../../domain/cultures/laboratory-words.ts";
import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import type { Zone } from "../../domain/days/zone.ts";
import type { Entry } from "../../domain/timeline/timeline.ts";
import { writeAudit } from "../../store/audit.ts";
import type { PatientKey } from "../../store/patient-of-entry.ts";
import { lockPatient, type Recording } from "../../store/patients.ts";
import type { Read, Tx } from "../../store/store.ts";
import { loadTimeline } from "../../store/timelines.ts";
import { type Act, recording } from "../act.ts";
import { sameVersion } from "../same-version.ts";
import { determineAgain } from "./determine-again.ts";
import { loadWayRules } from "./way-rules.ts";

/** How entries of one kind that belong to a patient and to no stay are found, stored and answered. */
export interface CultureKind<T extends Entry> {
  readonly name: "specimen" | "sign" | "finding";
  key(id: number): PatientKey;
  load(read: Read, id: number): Promise<T | null>;
  replace(tx: Tx, by: Recording & { reason?: string }, change: { old: T; now: T }): Promise<void>;
  /** As it is answered on the wire. */
  current(entry: T): object;
}

/** A change of such an entry: why, and the version that the person saw. */
export interface CultureChange {
  readonly id: number;
  readonly reason: string;
  readonly seenVersion?: number | undefined;
}

/** The days on which something may be recorded of a patient who is locked. */
export interface DaysOfPatient {
  readonly zone: Zone;
  readonly words: LaboratoryWords;
  readonly today: DayNumber;
  /** Faults of a day: `in-the-future`, `outside-surveillance-days`. */
  faultsOf(day: DayNumber, pointer: string): Fault[];
}

/** Loads them, with all stays of the surviving patient. */
export async function daysOfPatient(
  read: Read,
  { facilityId, survivorId, now }: { facilityId: number; survivorId: number; now: Instant },
): Promise<DaysOfPatient> {
  const rules = await loadWayRules(read, facilityId);
  const today = rules.zone.dayOf(now);
  const accepted = acceptedDays(await loadTimeline(read, survivorId), rules, today);
  return {
    zone: rules.zone,
    words: rules.words,
    today,
    faultsOf: (day, pointer) =>
      day > today
        ? [{ code: "in-the-future", pointer, detail: "This day has not come yet." }]
        : dayFaults(accepted, day, pointer),
  };
}

/** The one way in which such an entry is changed: lock, load, compare versions, decide, store, write the audit entry. */
export function changeCulture<T extends Entry>(
  act: Act,
  { id, reason, seenVersion }: CultureChange,
  change: {
    readonly kind: CultureKind<T>;
    readonly action: AuditAction;
    /** How many new entries it needs. */
    readonly ids?: number;
    readonly decide: (tx: Tx, old: T, days: () => Promise<DaysOfPatient>) => Promise<T>;
  },
): Promise<{ version: number; now: T }> {
  const { kind, action, decide } = change;
  const work = async (tx: Tx) => {
    const by = { ...recording(act), reason };
    const patient = await lockPatient(tx, by.facilityId, kind.key(id));
    const old = (await kind.load(tx, id)) ?? refuse("not-found", `There is no such ${kind.name}.`);
    if (old.voidReason !== null)
      refuse("entry-voided", `This ${kind.name} is marked as entered in error.`, { other: `${kind.name} ${id}` });
    sameVersion(old, seenVersion, kind.current(old));
    const { facilityId, now: at } = by;
    const now = await decide(tx, old, () => daysOfPatient(tx, { facilityId, survivorId: patient.id, now: at }));
    await kind.replace(tx, by, { old, now });
    await determineAgain(tx, by, { patientIds: [patient.id], cause: action });
    const details = { [`${kind.name}Id`]: id, version: now.version, reason };
    await writeAudit(tx, by, { action, patientIds: [patient.id], details });
    return { version: now.version, now };
  };
  return act.store.tx(work, { ids: change.ids ?? 0 });
}

/** Refuses with all of the faults, if there are any. */
export function refuseFaults([first, ...more]: readonly Fault[]): void {
  if (first) throw new Problem(first, ...more);
}
