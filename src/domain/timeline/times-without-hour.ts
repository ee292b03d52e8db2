import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import type { Instant } from "../days/day-number.ts";
import type { QualityFinding, QualityPeriod } from "./data-quality.ts";
import { type Catheter, hasNoHour, type Stay, stands } from "./timeline.ts";
import { catheterStretch, standingCatheters } from "./ward-stretches.ts";

const dayLongMs = 24 * 3_600_000;

/** The times of a stay of which only the day is known, each from when to when it may be. */
export function timesWithoutHour(stay: Stay, period: QualityPeriod): QualityFinding[] {
  const found = (kind: QualityFinding["kind"], entry: string, at: Instant | null, wardId: number | null = null) =>
    at === null ? [] : [{ kind, wardId, stayId: stay.id, entry, start: at, end: dayEndOf(period, at) }];
  const ofStay = (["admittedAt", "dischargedAt"] as const).filter((field) => hasNoHour(stay, field));
  const moves = stay.wardStays.filter(stands).flatMap((one) => {
    const fields = (["startAt", "endAt"] as const).filter((field) => hasNoHour(one, field));
    return fields.flatMap((field) => found("time-no-hour", `ward stay ${one.id}`, one[field], one.wardId));
  });
  const catheters = standingCatheters(stay).filter(({ kind }) => countsAsIndwelling(kind));
  const insertions = catheters.flatMap((one) => {
    const start = hasNoHour(one, "insertedAt") ? (catheterStretch(stay, one)?.start ?? null) : null;
    return found("insertion-no-hour", `catheter ${one.id}`, start);
  });
  return [
    ...ofStay.flatMap((field) => found("time-no-hour", `stay ${stay.id}`, stay[field])),
    ...moves,
    ...insertions,
    ...catheters.flatMap((one) => removalWithoutHour(stay, one)),
  ];
}

function removalWithoutHour(stay: Stay, catheter: Catheter): QualityFinding[] {
  const { id, removedAfterAt: start, removedBeforeAt: before } = catheter;
  if (!hasNoHour(catheter, "removedAt") || start === null || before === null) return [];
  // Who has left is in no census, whatever the hour of the removal was.
  const end = Math.max(start, Math.min(before, stay.dischargedAt ?? before));
  return [{ kind: "removal-no-hour", wardId: null, stayId: stay.id, entry: `catheter ${id}`, start, end }];
}

function dayEndOf({ dayEnd }: QualityPeriod, at: Instant): Instant {
  return dayEnd?.(at) ?? at + dayLongMs;
}
