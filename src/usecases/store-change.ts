import { closedPatientDays } from "../domain/counting/patient-days.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { firstChange, latestEnd } from "../domain/timeline/first-change.ts";
import type { PatientTimeline } from "../domain/timeline/timeline.ts";
import { postToLedger } from "../store/ledger.ts";
import type { Recording } from "../store/patients.ts";
import { saveTimelines, type TimelineChange } from "../store/save-timelines.ts";
import type { Tx } from "../store/store.ts";
import { loadCountingRules } from "./months/counting-rules.ts";

/** Stores changes of locked patients and posts them to the ledger. */
export async function storeChanges(
  tx: Tx,
  by: Recording & { reason?: string },
  changes: readonly TimelineChange[],
): Promise<void> {
  await saveTimelines(tx, by, changes);
  const recounts = changes.flatMap(({ before, after }) => {
    const from = firstChange(before, after);
    return from === null ? [] : [{ timeline: after, from }];
  });
  await recount(tx, by, recounts);
}

/** A patient whose ledger rows are to be made anew from an instant on. */
export interface Recount {
  readonly timeline: PatientTimeline;
  readonly from: Instant;
}

/** Rebuilds ledger rows of locked patients from their timelines; returns how many rows were wrong. */
export async function recount(
  tx: Tx,
  by: Recording,
  recounts: readonly Recount[],
): Promise<{ removed: number; added: number }> {
  if (recounts.length === 0) return { removed: 0, added: 0 };
  const from = Math.min(...recounts.map((r) => r.from));
  const latest = latestEnd(
    recounts.map((r) => r.timeline),
    by.now,
  );
  const rules = await loadCountingRules(
    tx,
    by.facilityId,
    (zone) => ({ first: firstDayOf(zone.dayOf(from)), last: zone.dayOf(latest) + 1 }),
    wardsOf(recounts),
  );
  const parts = recounts.map(({ timeline, from: own }) => {
    const fromDay = firstDayOf(rules.zone.dayOf(own));
    const rows = closedPatientDays(timeline, rules).filter((row) => row.day >= fromDay);
    return { patientId: timeline.patientId, fromDay, rows };
  });
  return postToLedger(tx, parts);
}

/**
 * A census at 24:00 keeps the day that ended, and the zone may have skipped a date: so the first day that an instant
 * can touch lies up to two days before its own.
 */
export function firstDayOf(day: number): number {
  return day - 2;
}

function wardsOf(recounts: readonly Recount[]): number[] {
  return recounts.flatMap((r) => r.timeline.stays.flatMap((stay) => stay.wardStays.map((w) => w.wardId)));
}
