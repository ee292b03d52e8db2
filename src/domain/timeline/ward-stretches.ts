import type { AbsenceKind } from "../../../shared/vocabulary.ts";
import type { Instant } from "../days/day-number.ts";
import type { CountedCatheter, CountedStay } from "./counted-timeline.ts";
import { stands, wardStaysInOrder } from "./timeline.ts";

/** Time of a stay at one place. `end` is null while it lasts. */
export interface WardStretch {
  readonly wardStayId: number;
  readonly wardId: number;
  readonly start: Instant;
  readonly end: Instant | null;
  /** `ward`: on the ward; else off the wards, with the kind that is recorded. */
  readonly kind: "ward" | AbsenceKind | "unknown";
}

/**
 * A stay as stretches on and off the wards, in order. Time off the wards lies between two ward stays, or between
 * the last one and the discharge, and carries the ward that it follows. Time before the first ward stay is neither.
 */
export function wardStretches(stay: CountedStay): WardStretch[] {
  const wardStays = wardStaysInOrder(stay);
  const stretches: WardStretch[] = [];
  for (const [i, { id: wardStayId, wardId, startAt, endAt, absenceAfter }] of wardStays.entries()) {
    stretches.push({ wardStayId, wardId, start: startAt, end: endAt, kind: "ward" });
    if (endAt === null) continue;
    const offEnd = wardStays[i + 1]?.startAt ?? stay.dischargedAt;
    if (offEnd !== null && offEnd <= endAt) continue;
    stretches.push({ wardStayId, wardId, start: endAt, end: offEnd, kind: absenceAfter ?? "unknown" });
  }
  return stretches;
}

/** Whether a stretch of time holds an instant; its end is left out, and null while it lasts. */
export function holds({ start, end }: { readonly start: Instant; readonly end: Instant | null }, at: Instant): boolean {
  return start <= at && (end === null || at < end);
}

/** Whether a stretch earns ward days: on the ward, or away for a procedure with the bed held. */
export function countsForTheWard(stretch: WardStretch): boolean {
  return stretch.kind === "ward" || stretch.kind === "procedure";
}

/**
 * When a catheter was in place as far as the stay reaches; `end` is null while it is in. A catheter in place on
 * arrival starts with the stay. A removal known only to lie between two instants ends at the first of them, the
 * last at which the catheter is known to have been in place. Null when nothing of it lies inside the stay.
 */
export function catheterStretch(
  stay: Pick<CountedStay, "admittedAt" | "dischargedAt">,
  catheter: CountedCatheter,
): { start: Instant; end: Instant | null } | null {
  const start = Math.max(catheter.insertedAt ?? stay.admittedAt, stay.admittedAt);
  const removed = catheter.removedAt ?? catheter.removedAfterAt;
  const end = removed === null ? stay.dischargedAt : Math.min(removed, stay.dischargedAt ?? removed);
  return end !== null && end < start ? null : { start, end };
}

/** Catheters of a stay that stand. */
export function standingCatheters<T extends CountedCatheter>(stay: { readonly catheters: readonly T[] }): T[] {
  return stay.catheters.filter(stands);
}
