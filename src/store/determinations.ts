import { createHash } from "node:crypto";
import type { AuditAction } from "../../shared/audit-words.ts";
import type { CaseDecision, CaseState } from "../../shared/case-words.ts";
import type { Determination } from "../domain/criteria/index.ts";
import type { KeptOutcome } from "../domain/cultures/case-state.ts";
import type { MayCount } from "../domain/cultures/may-count.ts";
import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import { monthDays } from "../domain/days/month.ts";
import { longestWindowDays } from "../domain/editions/index.ts";
import { insertRows } from "./bulk.ts";
import { inChunks } from "./in-chunks.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import type { TouchedDays } from "./trace.ts";

/** What a culture was determined to be, with the work on it. Of the last one of a case `state` says how far that is. */
export interface StoredDetermination {
  readonly caseId: number;
  readonly number: number;
  /** The patient for whom it was recorded. */
  readonly patientId: number;
  readonly subjectKind: "specimen" | "finding";
  readonly day: DayNumber;
  /** The ward at collection. */
  readonly placeId: number | null;
  readonly editionId: string;
  readonly outcome: KeptOutcome;
  readonly eventDay: DayNumber | null;
  readonly wardId: number | null;
  readonly isCauti: boolean;
  readonly summary: string;
  readonly reported: string;
  /** The determination as JSON; `null` in it when there is nothing to determine any more. */
  readonly body: string;
  readonly knownThrough: DayNumber;
  readonly settlesOn: DayNumber;
  readonly cause: AuditAction;
  readonly reason: string | null;
  readonly state: CaseState | "replaced";
  /** Where an event of it could count, as JSON: `[]` when it is out of scope, null when that cannot be said. */
  readonly mayCount: string | null;
  readonly revision: number;
  readonly decision: CaseDecision | null;
  readonly decided: string | null;
}

/** A stored determination as it is read, with the surviving patient. */
export interface KeptDetermination extends StoredDetermination {
  readonly survivorId: number;
  readonly digest: string;
  readonly determinedAt: Instant;
  readonly determinedBy: number;
}

const table = {
  table: "determination",
  columns: {
    case_id: "int",
    number: "int",
    patient_id: "int",
    subject_kind: "text",
    day: "int",
    place_id: "int",
    edition_id: "text",
    outcome: "text",
    event_day: "int",
    ward_id: "int",
    is_cauti: "bool",
    summary: "text",
    reported: "text",
    body: "text",
    digest: "text",
    known_through: "int",
    settles_on: "int",
    cause: "text",
    reason: "text",
    determined_at: "instant",
    determined_by: "int",
    state: "text",
    may_count: "text",
    revision: "int",
    decision: "text",
    decided: "text",
    facility_id: "int",
  },
} as const;

/** The days of the months in which a culture can be counted, or be open. */
export function daysCounted({ eventDay, day, mayCount }: StoredDetermination): TouchedDays {
  const months = (mayCountIn({ mayCount }) ?? []).map((one) => monthDays(one.month));
  const at = eventDay ?? day;
  // A culture at the beginning of a month can have its event at the end of the one before.
  const days = [at - longestWindowDays, at, ...months.flatMap(({ first, last }) => [first, last])];
  return { first: Math.min(...days), last: Math.max(...days) };
}

/** Adds determinations; those of the same cases that were in force so far stay as they are and say `replaced`. */
export async function addDeterminations(tx: Tx, by: Recording, added: readonly StoredDetermination[]): Promise<void> {
  await inChunks(
    added.map(({ caseId }) => caseId),
    async (caseIds) => {
      const where = { caseId: { in: caseIds }, state: { not: "replaced" } };
      await tx.db.determination.updateMany({ where, data: { state: "replaced" } });
      return [];
    },
  );
  const rows = added.map((one) => [
    ...[one.caseId, one.number, one.patientId, one.subjectKind, one.day, one.placeId, one.editionId, one.outcome],
    ...[one.eventDay, one.wardId, one.isCauti, one.summary, one.reported, one.body, digestOf(one.body)],
    ...[one.knownThrough, one.settlesOn, one.cause, one.reason, by.now, by.personId],
    ...[one.state, one.mayCount, one.revision, one.decision, one.decided, by.facilityId],
  ]);
  await insertRows(tx, table, rows);
}

/** The digest of a determination's text. */
export function digestOf(body: string): string {
  return createHash("sha256").update(body).digest("hex");
}

/** Says that determinations in force were looked at again up to a day and came out the same, at the same place. */
export async function stillHold(tx: Tx, caseIds: readonly number[], knownThrough: DayNumber): Promise<void> {
  await inChunks(caseIds, async (chunk) => {
    const where = { caseId: { in: chunk }, state: { not: "replaced" } };
    await tx.db.determination.updateMany({ where, data: { knownThrough } });
    return [];
  });
}

const inForce = { state: { not: "replaced" } };
const withSurvivor = { patient: { select: { survivorId: true } } };

/** What is in force of the cases of these surviving patients, in the order of cases. */
export async function determinationsOf(read: Read, survivorIds: readonly number[]): Promise<KeptDetermination[]> {
  const rows = await inChunks(survivorIds, (chunk) =>
    read.db.determination.findMany({
      where: { ...inForce, patient: { survivorId: { in: chunk } } },
      include: withSurvivor,
      orderBy: { caseId: "asc" },
    }),
  );
  return rows.map(keptFrom);
}

/** Everything that a case was determined to be, oldest first; empty when there is no such case in the facility. */
export async function determinationsOfCase(
  read: Read,
  facilityId: number,
  caseId: number,
): Promise<KeptDetermination[]> {
  const where = { caseId, facilityId };
  const rows = await read.db.determination.findMany({ where, include: withSurvivor, orderBy: { number: "asc" } });
  return rows.map(keptFrom);
}

type Row = Awaited<ReturnType<Read["db"]["determination"]["findFirstOrThrow"]>> & {
  readonly patient: { readonly survivorId: number };
};

/** A row of the table as it is read elsewhere in this room. */
export function keptFrom({ patient, determinedAt, ...row }: Row): KeptDetermination {
  return { ...row, survivorId: patient.survivorId, determinedAt: determinedAt.getTime() } as KeptDetermination;
}

/** Where an event of a case could count; null when that cannot be said. */
export function mayCountIn({ mayCount }: Pick<StoredDetermination, "mayCount">): readonly MayCount[] | null {
  return mayCount === null ? null : (JSON.parse(mayCount) as MayCount[]);
}

/**
 * The determination of a stored text; null when there is nothing to determine any more. One that was stored before
 * hinges were worked out has none, and closes by its outcome, as it did then.
 */
export function determinationIn({ body }: Pick<StoredDetermination, "body">): Determination | null {
  const stored = JSON.parse(body) as Determination | null;
  if (stored === null || "hinges" in stored) return stored;
  const { outcome, event, ...rest } = stored as Determination;
  const closes = outcome === "negative" || outcome === "not-usable" || outcome === "set-aside";
  return { ...rest, outcome, closes, hinges: [], event: event && { ...event, catheterDay: null } };
}
