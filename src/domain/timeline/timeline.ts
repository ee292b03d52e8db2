import type { InsertionRecord, RemovalRecord } from "../../../shared/records.ts";
import type { AbsenceKind, CatheterKind } from "../../../shared/vocabulary.ts";
import type { Instant } from "../days/day-number.ts";
import type { CountedWardStay } from "./counted-timeline.ts";

/** What every entry of a record has. An entry is never deleted: it is revised, or voided with a reason. */
export interface Entry {
  readonly id: number;
  /** 1 when new; each change adds one. */
  readonly version: number;
  /** Why the entry was voided; null while it stands. */
  readonly voidReason: string | null;
  /** What is doubtful about the entry as it came in, such as a local time that occurred twice. */
  readonly marks: readonly Mark[];
}

/**
 * What is doubtful about a field: its local time occurred twice, and the earlier instant was taken; or only the day is
 * known, and an instant of that day was taken (`no-hour`: the file gave 00:00 for it).
 */
export type Mark = `${"repeated-hour" | "time-unknown" | "no-hour"}:${string}`;

/** Whether only the day is known of a field, because the file gave 00:00 for it. */
export function hasNoHour({ marks }: Pick<Entry, "marks">, field: string): boolean {
  return marks.includes(`no-hour:${field}`);
}

/** Time on one ward and bed; `endAt` is null while the patient is there. */
export interface WardStay extends Entry {
  readonly wardId: number;
  readonly bed: string | null;
  readonly startAt: Instant;
  readonly endAt: Instant | null;
  /** The kind of the time off the wards that follows, when it is known. */
  readonly absenceAfter: AbsenceKind | null;
}

/** One catheter. What nobody knows stays null. */
export interface Catheter extends Entry {
  readonly number: string | null;
  readonly kind: CatheterKind;
  readonly insertedAt: Instant | null;
  readonly inPlaceOnArrival: boolean;
  readonly removedAt: Instant | null;
  /** Found out: still in place at the first instant, gone at the second. Both or neither. */
  readonly removedAfterAt: Instant | null;
  readonly removedBeforeAt: Instant | null;
  readonly lastSeenAt: Instant | null;
  readonly indication: string | null;
  readonly sizeFr: number | null;
  readonly balloonMl: number | null;
  /** What was written down of the insertion and of the removal; null when nothing was. */
  readonly insertionRecord?: InsertionRecord | null;
  readonly removalRecord?: RemovalRecord | null;
  /** The first and the last note about it that stand; kept with the notes and not with the catheter. */
  readonly noted?: { readonly first: Instant; readonly last: Instant } | null;
}

export interface Stay extends Entry {
  /** The patient it was recorded for; after a merge another one may hold its days. */
  readonly patientId: number;
  readonly number: string;
  readonly admittedAt: Instant;
  readonly dischargedAt: Instant | null;
  readonly disposition: string | null;
  /** Admission and discharge follow the first and the last move. */
  readonly spanFromMoves: boolean;
  readonly wardStays: readonly WardStay[];
  readonly catheters: readonly Catheter[];
}

/** Everything recorded about a patient in the facility, over all stays, also those of merged patients. */
export interface PatientTimeline {
  readonly patientId: number;
  readonly stays: readonly Stay[];
}

/** The fields of a new entry. */
export const newEntry = { version: 1, voidReason: null, marks: [] as readonly Mark[] } as const;

/** True while the entry stands. */
export function stands(entry: Pick<Entry, "voidReason">): boolean {
  return entry.voidReason === null;
}

/** The entry with changes, one version on. */
export function revise<T extends Entry>(entry: T, changes: Partial<Omit<T, "id" | "version">>): T {
  return { ...entry, ...changes, version: entry.version + 1 };
}

/** The marks of an entry some of whose times are given anew: what was doubtful about these is gone, or told anew. */
export function markedAnew(entry: Pick<Entry, "marks">, changes: object, anew: readonly Mark[] = []): readonly Mark[] {
  const kept = entry.marks.filter((mark) => !(mark.slice(mark.indexOf(":") + 1) in changes));
  return kept.length === entry.marks.length && anew.length === 0 ? entry.marks : [...kept, ...anew];
}

/** Ward stays that stand, in the order in which the patient lived them. */
export function wardStaysInOrder<T extends CountedWardStay>(stay: { readonly wardStays: readonly T[] }): T[] {
  return stay.wardStays.filter(stands).sort((a, b) => a.startAt - b.startAt || endOf(a) - endOf(b) || a.id - b.id);
}

/** The end of a ward stay, or infinity while the patient is there. */
export function endOf(wardStay: Pick<WardStay, "endAt">): number {
  return wardStay.endAt ?? Number.POSITIVE_INFINITY;
}

/** The timeline with one stay put in the place of the one of the same id, or added. */
export function withStay(timeline: PatientTimeline, stay: Stay): PatientTimeline {
  const known = timeline.stays.some((s) => s.id === stay.id);
  const stays = known ? timeline.stays.map((s) => (s.id === stay.id ? stay : s)) : [...timeline.stays, stay];
  return { ...timeline, stays };
}

/** The list with one entry put in the place of the one of the same id, or added. */
export function withEntry<T extends Entry>(list: readonly T[], entry: T): T[] {
  return list.some((e) => e.id === entry.id) ? list.map((e) => (e.id === entry.id ? entry : e)) : [...list, entry];
}
