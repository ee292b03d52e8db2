import type { Instant } from "../domain/days/day-number.ts";
import type { Read } from "./store.ts";

/** Surviving patients by id, each with the hospital's number. */
export type Identifiers = ReadonlyMap<number, string>;

/**
 * Who was on any of these wards at an instant, or may have had a bed held there during a procedure; with `leftSince` also
 * who left one of them at that earlier instant or later.
 */
export async function patientsOnWards(
  read: Read,
  facilityId: number,
  { wardIds, at, leftSince }: { wardIds: readonly number[]; at: Instant; leftSince?: Instant },
): Promise<Identifiers> {
  const when = new Date(at);
  const until = leftSince === undefined ? { gt: when } : { gte: new Date(leftSince) };
  const wardStays = await read.db.wardStay.findMany({
    where: {
      ...{ wardId: { in: [...wardIds] }, voidKey: 0, startAt: { lte: when } },
      OR: [{ endAt: null }, { endAt: until }, { absenceAfter: "procedure" }],
      stay: { facilityId, voidKey: 0, OR: [{ dischargedAt: null }, { dischargedAt: until }] },
    },
    select: { stay: { select: { patient: { select: { survivor: { select: { id: true, identifier: true } } } } } } },
  });
  return new Map(wardStays.map(({ stay }) => [stay.patient.survivor.id, stay.patient.survivor.identifier]));
}
