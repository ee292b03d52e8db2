import type { DayNumber, Instant } from "../days/day-number.ts";
import type { CountedCatheter, CountedStay, CountedTimeline, CountedWardStay } from "../timeline/counted-timeline.ts";
import type { CountingRules, PatientDayRow } from "./patient-days.ts";

/**
 * The closed patient-days by another road than `closedPatientDays`, to check it: every census is asked where the
 * patient was and what was in place, without stretches and without uniting them.
 */
export function enumeratedPatientDays(timeline: CountedTimeline, rules: CountingRules): PatientDayRow[] {
  const rows: PatientDayRow[] = [];
  const stays = timeline.stays.filter((stay) => stay.voidReason === null);
  for (const [i, day] of rules.census.days.entries()) {
    const row = rowAt(stays, { day, instant: rules.census.instants[i] as Instant, rules });
    if (row) rows.push(row);
  }
  return rows;
}

/** The row of the first stay that has the patient at a census; null when none does. */
function rowAt(
  stays: readonly CountedStay[],
  { day, instant, rules }: { day: DayNumber; instant: Instant; rules: CountingRules },
): PatientDayRow | null {
  for (const stay of stays) {
    if (instant < stay.admittedAt || (stay.dischargedAt !== null && instant >= stay.dischargedAt)) continue;
    const wardId = wardHolding(stay, instant);
    if (wardId === null || !rules.isInpatient(wardId, day)) continue;
    const catheter = stay.catheters.some((each) => inPlace(stay, each, instant));
    return { day, wardId, stayId: stay.id, catheter };
  }
  return null;
}

/** The ward that has the patient at an instant of a closed stretch, or holds the bed; null when none does. */
function wardHolding(stay: CountedStay, at: Instant): number | null {
  let last: CountedWardStay | null = null;
  let later = stay.dischargedAt !== null;
  for (const wardStay of stay.wardStays) {
    if (wardStay.voidReason !== null) continue;
    if (wardStay.startAt > at) {
      later = true;
      continue;
    }
    if (wardStay.endAt === null) return null;
    if (at < wardStay.endAt) return wardStay.wardId;
    if (last === null || isAfter(wardStay, last)) last = wardStay;
  }
  return last !== null && later && last.absenceAfter === "procedure" ? last.wardId : null;
}

/** Which of two ended ward stays the patient left last. */
function isAfter(a: CountedWardStay, b: CountedWardStay): boolean {
  if (a.startAt !== b.startAt) return a.startAt > b.startAt;
  if (a.endAt !== b.endAt) return (a.endAt ?? 0) > (b.endAt ?? 0);
  return a.id > b.id;
}

function inPlace(stay: CountedStay, catheter: CountedCatheter, at: Instant): boolean {
  if (catheter.voidReason !== null || catheter.kind !== "indwelling-urethral") return false;
  const from = catheter.insertedAt ?? stay.admittedAt;
  const removed = catheter.removedAt ?? catheter.removedAfterAt;
  return at >= from && (removed === null || at < removed);
}
