import type { AbsenceKind, CatheterKind } from "../../../shared/vocabulary.ts";
import {
  type Catheter,
  type Entry,
  newEntry,
  type PatientTimeline,
  type Stay,
  type WardStay,
} from "../../../src/domain/timeline/timeline.ts";

/** Wards by the letter under which the lines name them. */
export const wardIds = { A: 101, B: 102, C: 103 } as const;
const wardOf = (letter: string | undefined) => wardIds[letter as keyof typeof wardIds] as number;
const letterOf = (wardId: number) => Object.entries(wardIds).find(([, id]) => id === wardId)?.[0] ?? `${wardId}`;

const stayLine = /^stay (\d+): (\d+)-(\d*)$/;
const wardStayLine = /^ward stay (\d+): ([A-C]) (\d+)-(\d*)(?: then (procedure|leave|outpatient))?$/;
const catheterLine = /^catheter (\d+): (arrived )?(\d+|\?)-(?:(\d+)\.\.(\d+)|(\d*))(?: seen (\d+))?(?: (\D+))?$/;

/**
 * The record of patient 1 as lines say it; instants are small numbers, and what comes under a stay belongs to it:
 * `stay 1: 10-30`, `ward stay 2: A 10-20 then procedure`, `catheter 3: 12-18`. Nothing after the dash: still there.
 * A catheter that `arrived` was in place on arrival, with its insertion or `?`; `12-18..20` was removed between 18
 * and 20; `seen 15` and its kind, when it is no urethral one, come last.
 */
export function timelineOf(...lines: readonly string[]): PatientTimeline {
  const stays: (Stay & { wardStays: WardStay[]; catheters: Catheter[] })[] = [];
  for (const line of lines) {
    const stay = stays.at(-1);
    const asStay = stayLine.exec(line);
    if (asStay) stays.push({ ...stayFrom(asStay), wardStays: [], catheters: [] });
    else if (wardStayLine.test(line)) stay?.wardStays.push(wardStayFrom(line));
    else if (catheterLine.test(line)) stay?.catheters.push(catheterFrom(line));
    else throw new Error(`nothing is known of "${line}"`);
  }
  return { patientId: 1, stays };
}

/** The one stay of such a record. */
export function stayFromLines(...lines: readonly string[]): Stay {
  const [stay] = timelineOf(...lines).stays;
  if (!stay) throw new Error("the lines have no stay");
  return stay;
}

function stayFrom([, id, start, end]: RegExpExecArray): Omit<Stay, "wardStays" | "catheters"> {
  const fixed = { patientId: 1, number: `S-${id}`, disposition: null, spanFromMoves: false };
  return { ...newEntry, ...fixed, id: Number(id), admittedAt: Number(start), dischargedAt: maybe(end) };
}

function wardStayFrom(line: string): WardStay {
  const [, id, letter, start, end, then] = wardStayLine.exec(line) ?? [];
  const when = { startAt: Number(start), endAt: maybe(end), absenceAfter: (then ?? null) as AbsenceKind | null };
  return { ...newEntry, ...when, id: Number(id), wardId: wardOf(letter), bed: null };
}

function catheterFrom(line: string): Catheter {
  const [, id, arrived, start, after, before, end, seen, kind] = catheterLine.exec(line) ?? [];
  return {
    ...newEntry,
    ...{ number: null, indication: null, sizeFr: null, balloonMl: null },
    id: Number(id),
    kind: (kind ?? "indwelling-urethral") as CatheterKind,
    insertedAt: start === "?" ? null : Number(start),
    inPlaceOnArrival: arrived !== undefined,
    removedAt: maybe(end),
    removedAfterAt: maybe(after),
    removedBeforeAt: maybe(before),
    lastSeenAt: maybe(seen),
  };
}

function maybe(text: string | undefined): number | null {
  return text === undefined || text === "" ? null : Number(text);
}

/** The record as lines, with the versions of entries that were changed and the reasons of those that were voided. */
export function linesOf(timeline: PatientTimeline): string[] {
  return timeline.stays.flatMap((stay) => [
    `stay ${stay.id}: ${stay.admittedAt}-${stay.dischargedAt ?? ""}${fate(stay)}`,
    ...stay.wardStays.map((w) => {
      const then = w.absenceAfter === null ? "" : ` then ${w.absenceAfter}`;
      return `ward stay ${w.id}: ${letterOf(w.wardId)} ${w.startAt}-${w.endAt ?? ""}${then}${fate(w)}`;
    }),
    ...stay.catheters.map(catheterText),
  ]);
}

function catheterText(c: Catheter): string {
  const end = c.removedAfterAt === null ? (c.removedAt ?? "") : `${c.removedAfterAt}..${c.removedBeforeAt}`;
  const seen = c.lastSeenAt === null ? "" : ` seen ${c.lastSeenAt}`;
  const kind = c.kind === "indwelling-urethral" ? "" : ` ${c.kind}`;
  const arrived = c.inPlaceOnArrival ? "arrived " : "";
  return `catheter ${c.id}: ${arrived}${c.insertedAt ?? "?"}-${end}${seen}${kind}${fate(c)}`;
}

function fate(entry: Entry): string {
  const version = entry.version === 1 ? "" : ` v${entry.version}`;
  return `${version}${entry.voidReason === null ? "" : ` voided: ${entry.voidReason}`}`;
}
