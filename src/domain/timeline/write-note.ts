import { type Fault, refuse } from "../../../shared/problems.ts";
import type { Instant } from "../days/day-number.ts";
import { showLocalTime } from "../days/local-time.ts";
import type { Zone } from "../days/zone.ts";
import type { CatheterNote } from "./note.ts";
import { type Catheter, newEntry, revise, type Stay } from "./timeline.ts";
import { catheterStretch, wardStretches } from "./ward-stretches.ts";

/** What a note says, by its kind. What does not belong to the kind is left out. */
export type NoteText = Pick<CatheterNote, "kind" | "at"> &
  Partial<Pick<CatheterNote, "outcome" | "indication" | "items" | "amountMl" | "remark" | "marks">>;

/** Who writes a note down, and when. */
export interface Writing {
  readonly noteId: number;
  readonly catheterId: number;
  readonly writtenAt: Instant;
  readonly writtenBy: number;
}

/** A new note. */
export function newNote({ noteId, ...writing }: Writing, text: NoteText): CatheterNote {
  const nothing = { outcome: null, indication: null, items: null, amountMl: null, remark: null };
  return { ...newEntry, ...nothing, ...text, ...writing, id: noteId };
}

/** What a correction changes of a note. */
export type NoteChanges = Partial<
  Pick<CatheterNote, "at" | "outcome" | "indication" | "items" | "amountMl" | "remark">
>;

/** The fields that each kind of note has beside its time. */
const fieldsOf: Readonly<Record<CatheterNote["kind"], readonly (keyof NoteChanges)[]>> = {
  review: ["outcome", "indication", "remark"],
  confirmation: [],
  "care-check": ["items", "remark"],
  "urine-output": ["amountMl"],
};

/** A note with changes. Refuses `field-of-another-note`. */
export function correctNote(note: CatheterNote, changes: NoteChanges): CatheterNote {
  for (const name of Object.keys(changes) as (keyof NoteChanges)[])
    if (name !== "at" && !fieldsOf[note.kind].includes(name))
      refuse("field-of-another-note", "This kind of note does not have this field.", { pointer: `/${name}` });
  return revise(note, changes);
}

/** Faults of a note that says a catheter was in place when it was not. */
export function placeFaults(stay: Stay, catheter: Catheter, { at }: Pick<CatheterNote, "at">, zone: Zone): Fault[] {
  const stretch = catheterStretch(stay, catheter);
  const [early, late] = [stretch && at < stretch.start, stretch?.end != null && at > stretch.end];
  if (stretch && !early && !late) return [];
  const limit = early ? stretch?.start : stretch?.end;
  const when = limit == null ? "" : ` It was in place ${early ? "from" : "until"} ${showLocalTime(limit, zone)}.`;
  const detail = `The catheter was not in place at that time.${when}`;
  return [{ code: "not-in-place", pointer: "/at", detail, other: `catheter ${catheter.id}` }];
}

/** The ward on which the patient was at an instant, also while the bed was held; null when on none. */
export function wardAt(stay: Stay, at: Instant): number | null {
  const there = wardStretches(stay).findLast(({ start, end }) => start <= at && (end === null || at < end));
  return there?.wardId ?? null;
}
