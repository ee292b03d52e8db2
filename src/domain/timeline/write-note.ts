import { type Fault, Problem } from "../../../shared/problems.ts";
import { dayText, type Instant } from "../days/day-number.ts";
import { showLocalTime } from "../days/local-time.ts";
import type { Zone } from "../days/zone.ts";
import type { CatheterNote } from "./note.ts";
import { mayBeInPlace } from "./removal-within-day.ts";
import { type Catheter, hasNoHour, type Mark, markedAnew, newEntry, revise, type Stay } from "./timeline.ts";
import { holds, wardStretches } from "./ward-stretches.ts";

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

/**
 * A note with changes; `marks` are those of its new time. Refuses `field-of-another-note`, for each such field.
 */
export function correctNote(note: CatheterNote, changes: NoteChanges, marks: readonly Mark[] = []): CatheterNote {
  const names = Object.keys(changes) as (keyof NoteChanges)[];
  const [first, ...more] = names
    .filter((name) => name !== "at" && !fieldsOf[note.kind].includes(name))
    .map(
      (name): Fault => ({
        code: "field-of-another-note",
        pointer: `/${name}`,
        detail: "This kind of note does not have this field.",
      }),
    );
  if (first) throw new Problem(first, ...more);
  return revise(note, { ...changes, marks: markedAnew(note, changes, marks) });
}

/**
 * Faults of a note that says a catheter was in place when it was not. On the day of a removal without an hour it may have
 * been, so a note of that day is taken: it says that the removal came later.
 */
export function placeFaults(stay: Stay, catheter: Catheter, { at }: Pick<CatheterNote, "at">, zone: Zone): Fault[] {
  const stretch = mayBeInPlace(stay, catheter);
  const [early, late] = [stretch && at < stretch.start, stretch?.end != null && at > stretch.end];
  if (stretch && !early && !late) return [];
  const limit = early ? stretch?.start : stretch?.end;
  const ofDay =
    hasNoHour(catheter, early ? "insertedAt" : "removedAt") &&
    (limit === catheter.insertedAt || limit === catheter.removedBeforeAt);
  const shown = limit == null ? "" : ofDay ? dayText(zone.dayOf(limit)) : showLocalTime(limit, zone);
  const when = shown === "" ? "" : ` It was in place ${early ? "from" : "until"} ${shown}.`;
  const detail = `The catheter was not in place at that time.${when}`;
  return [{ code: "not-in-place", pointer: "/at", detail, other: `catheter ${catheter.id}` }];
}

/**
 * The ward on which the patient was at an instant, or the one before the time off the wards; null outside the stay. What
 * is written at the very end belongs to the last of them.
 */
export function wardAt(stay: Stay, at: Instant): number | null {
  const stretches = wardStretches(stay);
  const there = stretches.findLast((one) => holds(one, at));
  return (there ?? stretches.findLast(({ end }) => end === at))?.wardId ?? null;
}
