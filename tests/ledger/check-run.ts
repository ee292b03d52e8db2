import { isDeepStrictEqual } from "node:util";
import { expect } from "vitest";
import type { Store } from "../../src/store/store.ts";
import { loadMonth } from "../../src/usecases/months/load-month.ts";
import { notesOutOfPlace } from "./note-places.ts";
import { type Count, countDays } from "./oracle.ts";
import type { RandomRun } from "./random-hospital.ts";
import type { HospitalRecord, LedgerRow } from "./read-record.ts";

/** Compares a facility's ledger with the count by census instants, and its notes with the times of their catheters. */
export function checkLedger({ record, now }: Pick<RandomRun, "record" | "now">, tell: () => string): Count {
  const count = countDays(record, now);
  expect(record.ledger, isDeepStrictEqual(record.ledger, count.closed) ? "" : tell()).toEqual(count.closed);
  const wrong = notesOutOfPlace(record);
  expect(wrong, wrong.length === 0 ? "" : tell()).toEqual([]);
  return count;
}

/** The same, and the report over all days, read at `now`; and that nobody was at two places at once. */
export async function checkRun(store: Store, run: RandomRun, tell: () => string): Promise<Count> {
  const { actor, record, now } = run;
  const count = checkLedger(run, tell);
  const { wards } = await loadMonth({ store, actor, now }, { days: null });
  const reported = wards.flatMap(({ wardId, days }) =>
    days.map(({ day, patientDays, catheterDays }) => `${wardId} ${day}: ${patientDays} ${catheterDays}`),
  );
  expect(reported.sort(), tell()).toEqual(wardDays([...count.closed, ...count.open]));
  expect(overlaps(record), tell()).toEqual([]);
  return count;
}

/** Everything that a person needs to see what a failed run did. */
export function story(seed: number, run: RandomRun): string {
  const said = run.outcomes.map((o) => `${o.result}${o.concurrent ? " (at once)" : ""}: ${o.said}`);
  return [`repeat by SEED=${seed} RUNS=1; ${run.record.zone}, now ${run.now}`, ...said].join("\n");
}

function wardDays(rows: readonly LedgerRow[]): string[] {
  const sums = new Map<string, { patients: number; catheters: number }>();
  for (const { wardId, day, catheter } of rows) {
    const key = `${wardId} ${day}`;
    const { patients, catheters } = sums.get(key) ?? { patients: 0, catheters: 0 };
    sums.set(key, { patients: patients + 1, catheters: catheters + (catheter ? 1 : 0) });
  }
  return [...sums].map(([key, { patients, catheters }]) => `${key}: ${patients} ${catheters}`).sort();
}

interface Span {
  readonly name: string;
  readonly owner: number;
  readonly start: number;
  readonly end: number;
}

/** Pairs of standing stays of one surviving patient, and of standing ward stays of one stay, that share any time. */
function overlaps(record: HospitalRecord): string[] {
  const survivor = new Map(record.patients.map((p) => [p.id, p.survivorId]));
  const stays = record.stays
    .filter((s) => s.voidKey === 0)
    .map((s) => spanOf(`stay ${s.id}`, survivor.get(s.patientId) ?? 0, [s.admittedAt, s.dischargedAt]));
  const wardStays = record.wardStays
    .filter((w) => w.voidKey === 0)
    .map((w) => spanOf(`ward stay ${w.id}`, w.stayId, [w.startAt, w.endAt]));
  return [stays, wardStays].flatMap((spans) =>
    spans.flatMap((a, i) => spans.slice(i + 1).flatMap((b) => (meet(a, b) ? [`${a.name} and ${b.name}`] : []))),
  );
}

function spanOf(name: string, owner: number, [start, end]: readonly [number, number | null]): Span {
  return { name, owner, start, end: end ?? Number.POSITIVE_INFINITY };
}

function meet(a: Span, b: Span): boolean {
  return a.owner === b.owner && Math.max(a.start, b.start) < Math.min(a.end, b.end);
}
