import { refuse } from "../../../shared/problems.ts";
import type { AbsenceKind } from "../../../shared/vocabulary.ts";
import type { Instant } from "../days/day-number.ts";
import { checkStay } from "./check-stay.ts";
import { stayOf } from "./find-entry.ts";
import { lastStartedBy } from "./move.ts";
import {
  endOf,
  type Mark,
  markedAnew,
  newEntry,
  type PatientTimeline,
  revise,
  withEntry,
  withStay,
} from "./timeline.ts";

export interface Absence {
  readonly stayId: number;
  readonly leftAt: Instant;
  /** null: nobody said why. */
  readonly kind: AbsenceKind | null;
  /** Back on the same ward and bed, with the id of the ward stay that begins then; null: not back yet. */
  readonly back: { readonly at: Instant; readonly wardStayId: number } | null;
  /** Of the end of the time on the ward, and of the beginning of the next one. */
  readonly marks?: readonly Mark[];
}

/**
 * The patient leaves the ward inside a stay. Without a return, the absence lasts until the next move or the discharge.
 * Refuses `not-on-a-ward` when the patient was away already, `end-before-start` when the return lies before the
 * leaving, `move-overlaps` when it lies after the next move.
 */
export function recordAbsence(timeline: PatientTimeline, absence: Absence): PatientTimeline {
  const stay = stayOf(timeline, absence.stayId);
  const on = lastStartedBy(stay, absence.leftAt, "/leftAt");
  if (endOf(on) <= absence.leftAt)
    refuse("not-on-a-ward", "The patient was not on a unit at that time.", {
      pointer: "/leftAt",
      other: `ward stay ${on.id}`,
    });
  const left = { endAt: absence.leftAt, absenceAfter: absence.kind };
  const marksOf = (field: string) => (absence.marks ?? []).filter((mark) => mark.endsWith(`:${field}`));
  const marks = markedAnew(on, left, marksOf("endAt"));
  let wardStays = withEntry(stay.wardStays, revise(on, { ...left, marks }));
  if (absence.back) {
    if (absence.back.at < absence.leftAt)
      refuse("end-before-start", "The return is before the departure.", { pointer: "/backAt" });
    if (absence.back.at > endOf(on))
      refuse("move-overlaps", "The patient was elsewhere by the time of the return.", {
        pointer: "/backAt",
        other: `ward stay ${on.id}`,
      });
    wardStays = withEntry(wardStays, {
      ...newEntry,
      id: absence.back.wardStayId,
      wardId: on.wardId,
      bed: on.bed,
      startAt: absence.back.at,
      endAt: on.endAt,
      absenceAfter: on.absenceAfter,
      marks: marksOf("startAt"),
    });
  }
  return checkStay(withStay(timeline, { ...stay, wardStays }), stay.id);
}
