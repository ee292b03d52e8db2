import { z } from "zod";
import { catheterState, type noteState, stayState, wardStayState } from "../../../shared/api/entries.ts";
import { catheterOf, stayOf, wardStayOf } from "../../domain/timeline/find-entry.ts";
import type { CatheterNote } from "../../domain/timeline/note.ts";
import type { Catheter, Entry, PatientTimeline, Stay, WardStay } from "../../domain/timeline/timeline.ts";

/** An entry as it is answered. */
export function stayAnswer(stay: Stay): z.output<typeof stayState> {
  const { patientId, version, voidReason, number, admittedAt, dischargedAt, disposition } = stay;
  const said = { stayId: stay.id, patientId, version, voidReason, number, admittedAt, dischargedAt, disposition };
  return { ...said, ...noHourOf(stay) };
}

export function wardStayAnswer(wardStay: WardStay): z.output<typeof wardStayState> {
  const { id, version, voidReason, wardId, bed, startAt, endAt, absenceAfter } = wardStay;
  return { wardStayId: id, version, voidReason, wardId, bed, startAt, endAt, absenceAfter, ...noHourOf(wardStay) };
}

/** The fields of which only the day is known; left out where there are none. */
export function noHourOf({ marks }: Pick<Entry, "marks">): { noHour?: string[] } {
  const fields = marks.flatMap((mark) => (mark.startsWith("no-hour:") ? [mark.slice("no-hour:".length)] : []));
  return fields.length === 0 ? {} : { noHour: fields };
}

export function catheterAnswer(stayId: number, catheter: Catheter): z.output<typeof catheterState> {
  const { id, marks, noted, insertionRecord = null, removalRecord = null, lastSeenAt, ...said } = catheter;
  const seen = [lastSeenAt, noted?.last ?? null].filter((at) => at !== null);
  return {
    ...said,
    catheterId: id,
    stayId,
    lastSeenAt: seen.length === 0 ? null : Math.max(...seen),
    insertionRecord,
    removalRecord,
    ...noHourOf({ marks }),
  };
}

export function noteAnswer(note: CatheterNote): z.output<typeof noteState> {
  const { id, marks: _marks, ...said } = note;
  return { ...said, noteId: id };
}

/** An entry that a change is about. */
export interface Subject {
  readonly kind: "stay" | "ward-stay" | "catheter";
  readonly id: number;
  /** The version that the person saw; left out by doors that carry none, such as files. */
  readonly seenVersion?: number | undefined;
}

/** A subject as it stands in a timeline, and as it is answered. Refuses `not-found` and `entry-voided`. */
export function findSubject(timeline: PatientTimeline, { kind, id }: Subject): { entry: Entry; current: object } {
  if (kind === "stay") {
    const entry = stayOf(timeline, id);
    return { entry, current: z.encode(stayState, stayAnswer(entry)) };
  }
  if (kind === "ward-stay") {
    const { wardStay } = wardStayOf(timeline, id);
    return { entry: wardStay, current: z.encode(wardStayState, wardStayAnswer(wardStay)) };
  }
  const { stay, catheter } = catheterOf(timeline, id);
  return { entry: catheter, current: z.encode(catheterState, catheterAnswer(stay.id, catheter)) };
}

/** The version of a subject, also of one that was voided. */
export function versionOf({ stays }: PatientTimeline, { kind, id }: Subject): number {
  const lists: Record<Subject["kind"], readonly Entry[]> = {
    stay: stays,
    "ward-stay": stays.flatMap((stay) => stay.wardStays),
    catheter: stays.flatMap((stay) => stay.catheters),
  };
  const entry = lists[kind].find((one) => one.id === id);
  if (!entry) throw new Error(`${kind} ${id} is not in the timeline`);
  return entry.version;
}
