import type { Act } from "../../src/usecases/act.ts";
import type { Chance } from "./chance.ts";
import type { CatheterRecord, HospitalRecord, StayRecord, WardStayRecord } from "./read-record.ts";

/** What an edit is drawn from: the record as it is, the time, and chance. */
export interface Scene {
  readonly record: HospitalRecord;
  readonly start: number;
  readonly now: number;
  readonly chance: Chance;
  /** Instants at which something hard happens: census instants and clock changes. */
  readonly hardInstants: readonly number[];
  /** The surviving patient whom every edit is to be about; null: anybody. */
  readonly focus: number | null;
  /** A number that no other edit has. */
  readonly number: number;
}

/** One random edit, ready to be made. */
export interface Edit {
  readonly said: string;
  run(act: Act): Promise<unknown>;
}

/** Draws an edit of one kind; null when the record has nothing that it could be about. */
export type Draw = (scene: Scene) => Edit | null;

export const minuteMs = 60_000;
export const hourMs = 60 * minuteMs;
export const dayMs = 24 * hourMs;

/** The standing stays that an edit may be about. */
export function standingStays({ record, focus }: Scene): StayRecord[] {
  const mine = new Set(record.patients.filter((p) => focus === null || p.survivorId === focus).map((p) => p.id));
  return record.stays.filter((stay) => stay.voidKey === 0 && mine.has(stay.patientId));
}

/** The standing ward stays of a stay in the order in which they were lived. */
export function standingWardStays({ record }: Scene, stay: StayRecord): WardStayRecord[] {
  const own = record.wardStays.filter((w) => w.stayId === stay.id && w.voidKey === 0);
  return own.sort((a, b) => a.startAt - b.startAt || (a.endAt ?? Infinity) - (b.endAt ?? Infinity) || a.id - b.id);
}

/** The standing catheters that an edit may be about, each with its stay. */
export function standingCatheters(scene: Scene): { catheter: CatheterRecord; stay: StayRecord }[] {
  return standingStays(scene).flatMap((stay) =>
    scene.record.catheters
      .filter((c) => c.stayId === stay.id && c.voidKey === 0)
      .map((catheter) => ({ catheter, stay })),
  );
}

/**
 * A time, mostly between two: often one that something else was recorded for, a census instant or a clock change;
 * now and then one that cannot be right.
 */
export function timeBetween(scene: Scene, after: number, before: number = scene.now): number {
  const { chance, now, start } = scene;
  const roll = chance.below(100);
  if (roll < 4) return start - 5 * dayMs + chance.below(Math.ceil((now - start) / hourMs) + 6 * 24) * hourMs;
  const last = Math.max(after, before);
  const special = roll < 25 ? recordedInstants(scene) : roll < 50 ? scene.hardInstants : [];
  const fitting = special.filter((at) => at >= after && at <= last);
  const quarterMs = 15 * minuteMs;
  return chance.maybe(fitting) ?? after + chance.below(Math.floor((last - after) / quarterMs) + 1) * quarterMs;
}

function recordedInstants({ record }: Scene): number[] {
  const all = [
    ...record.stays.flatMap((s) => [s.admittedAt, s.dischargedAt]),
    ...record.wardStays.flatMap((w) => [w.startAt, w.endAt]),
    ...record.catheters.flatMap((c) => [c.insertedAt, c.removedAt, c.removedAfterAt]),
    ...record.notes.map((note) => note.at),
  ];
  return all.filter((at) => at !== null);
}
