import { enumeratedPatientDays } from "../../domain/counting/enumerate-days.ts";
import type { PatientDayRow } from "../../domain/counting/patient-days.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import type { CountedTimeline } from "../../domain/timeline/counted-timeline.ts";
import { beginning, latestEnd } from "../../domain/timeline/first-change.ts";
import { writeAudit } from "../../store/audit.ts";
import { countedTimelines } from "../../store/counted-timelines.ts";
import { patientDays, postToLedger, type StoredPatientDay } from "../../store/ledger.ts";
import { patientPage } from "../../store/patient-pages.ts";
import { lockPatients } from "../../store/patients.ts";
import type { Read, Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { loadCountingRules } from "../months/counting-rules.ts";

/** A ledger row that is not as it should be; `ledger` or `recount` is null where there is no row. */
export interface LedgerDifference {
  readonly patientId: number;
  readonly day: DayNumber;
  readonly ledger: Omit<PatientDayRow, "day"> | null;
  readonly recount: Omit<PatientDayRow, "day"> | null;
}

export interface LedgerCheck {
  readonly patients: number;
  readonly rows: number;
  readonly differences: readonly LedgerDifference[];
}

/** Patients at a time: many where they are only read, few where others wait for them. */
const pageSize = { verify: 1000, rebuild: 200 };

/** Recounts every patient of the facility by enumerating census instants and compares the ledger with it. */
export async function verifyLedger(act: Act, onDifference?: (found: LedgerDifference) => void): Promise<LedgerCheck> {
  const page = (ids: readonly number[]) => act.store.read((read) => comparePage(read, act, ids));
  return overPages(act, { page, pageSize: pageSize.verify, onDifference });
}

/**
 * Makes the ledger of the facility anew from the recount, patients locked a page at a time; tells what differed.
 * Each page that differed leaves an audit entry.
 */
export async function rebuildLedger(act: Act, onDifference?: (found: LedgerDifference) => void): Promise<LedgerCheck> {
  const page = (ids: readonly number[]) => act.store.tx((tx) => repairPage(tx, act, ids));
  return overPages(act, { page, pageSize: pageSize.rebuild, onDifference });
}

interface OverPages {
  readonly page: (ids: readonly number[]) => Promise<Page>;
  readonly pageSize: number;
  readonly onDifference: ((found: LedgerDifference) => void) | undefined;
}

async function overPages(act: Act, { page, pageSize, onDifference }: OverPages): Promise<LedgerCheck> {
  const differences: LedgerDifference[] = [];
  let patients = 0;
  let rows = 0;
  for (let after = 0; ; ) {
    const ids = await act.store.read((read) => patientPage(read, act.actor.facilityId, after, pageSize));
    const last = ids.at(-1);
    if (last === undefined) return { patients, rows, differences };
    const found = await page(ids);
    for (const difference of found.differences) onDifference?.(difference);
    differences.push(...found.differences);
    patients += ids.length;
    rows += found.rows;
    after = last;
  }
}

interface Page {
  readonly rows: number;
  readonly differences: readonly LedgerDifference[];
  readonly expected: ReadonlyMap<number, readonly PatientDayRow[]>;
}

async function repairPage(tx: Tx, act: Act, ids: readonly number[]): Promise<Page> {
  await lockPatients(tx, act.actor.facilityId, ids);
  const page = await comparePage(tx, act, ids);
  if (page.differences.length === 0) return page;
  await postToLedger(
    tx,
    [...page.expected].map(([patientId, rows]) => ({ patientId, fromDay: everyDay, rows })),
  );
  const patientIds = page.differences.map((difference) => difference.patientId);
  const details = { rows: page.differences.length };
  await writeAudit(tx, recording(act), { action: "rebuild-ledger", patientIds, details });
  return page;
}

/** Earlier than any day that a ledger can hold. */
const everyDay = -1_000_000;

async function comparePage(read: Read, act: Act, ids: readonly number[]): Promise<Page> {
  const timelines = await countedTimelines(read, ids);
  const first = Math.min(...timelines.flatMap((timeline) => timeline.stays.map(beginning)), act.now);
  const rules = await loadCountingRules(read, act.actor.facilityId, (zone) => ({
    first: zone.dayOf(first) - 2,
    last: zone.dayOf(latestEnd(timelines, act.now)) + 1,
  }));
  const stored = await patientDays(read, ids, everyDay);
  const expected = new Map(
    timelines.map((timeline) => [
      timeline.patientId,
      enumeratedPatientDays(timeline, narrowed(rules, timeline, act.now)),
    ]),
  );
  return { rows: stored.length, expected, differences: differencesOf(expected, stored) };
}

/** The rules with the censuses of the patient's own years only: enumerating others would take long and find nothing. */
function narrowed<T extends { census: { days: Int32Array; instants: Float64Array } }>(
  rules: T,
  timeline: CountedTimeline,
  now: number,
): T {
  const twoDays = 2 * 86_400_000;
  const start = Math.min(now, ...timeline.stays.map(beginning)) - twoDays;
  const end = latestEnd([timeline], now) + twoDays;
  const inside = (instant: number) => instant >= start && instant <= end;
  const from = rules.census.instants.findIndex(inside);
  const to = rules.census.instants.findLastIndex(inside);
  const { days, instants } = rules.census;
  return { ...rules, census: { days: days.subarray(from, to + 1), instants: instants.subarray(from, to + 1) } };
}

function differencesOf(
  expected: ReadonlyMap<number, readonly PatientDayRow[]>,
  stored: readonly StoredPatientDay[],
): LedgerDifference[] {
  const byKey = new Map<string, LedgerDifference>();
  for (const { patientId, day, ...ledger } of stored)
    byKey.set(`${patientId} ${day}`, { patientId, day, ledger, recount: null });
  for (const [patientId, rows] of expected)
    for (const { day, ...recount } of rows) {
      const key = `${patientId} ${day}`;
      byKey.set(key, { patientId, day, ledger: byKey.get(key)?.ledger ?? null, recount });
    }
  return [...byKey.values()].filter(({ ledger, recount }) => !sameDay(ledger, recount));
}

function sameDay(a: Omit<PatientDayRow, "day"> | null, b: Omit<PatientDayRow, "day"> | null): boolean {
  return a?.wardId === b?.wardId && a?.stayId === b?.stayId && a?.catheter === b?.catheter;
}
