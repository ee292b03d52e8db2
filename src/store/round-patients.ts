import type { Instant } from "../domain/days/day-number.ts";
import type { Read } from "./store.ts";

/** Surviving patients by id, each with the hospital's number. */
export type Identifiers = ReadonlyMap<number, string>;

/** Who was on a ward at an instant, or may have had a bed held there during a procedure. */
export async function patientsOnWard(
  read: Read,
  facilityId: number,
  { wardId, at }: { wardId: number; at: Instant },
): Promise<Identifiers> {
  const when = new Date(at);
  const here = { wardId, voidKey: 0, startAt: { lte: when } };
  const wardStays = await read.db.wardStay.findMany({
    where: {
      ...here,
      OR: [{ endAt: null }, { endAt: { gt: when } }, { absenceAfter: "procedure" }],
      stay: { facilityId, voidKey: 0, OR: [{ dischargedAt: null }, { dischargedAt: { gt: when } }] },
    },
    select: { stay: { select: { patient: { select: { survivor: { select: { id: true, identifier: true } } } } } } },
  });
  return new Map(wardStays.map(({ stay }) => [stay.patient.survivor.id, stay.patient.survivor.identifier]));
}
