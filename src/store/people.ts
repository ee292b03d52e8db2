import type { Role } from "../../shared/vocabulary.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

export interface NewPerson {
  readonly id: number;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly wardIds: readonly number[];
}

/** A person with roles in the facility and the wards they belong to. */
export async function addPerson(tx: Tx, by: Recording, person: NewPerson): Promise<void> {
  const { facilityId, now } = by;
  await tx.db.person.create({
    data: {
      id: person.id,
      name: person.name,
      recordedAt: new Date(now),
      roles: { create: person.roles.map((role) => ({ facilityId, role })) },
      wards: { create: person.wardIds.map((wardId) => ({ wardId })) },
    },
  });
}

export interface PersonRow {
  readonly personId: number;
  readonly name: string;
  readonly facilityId: number;
  readonly roles: readonly Role[];
  readonly wardIds: readonly number[];
}

/** The active people of a facility with their roles and wards, in the order in which they came. */
export async function people(read: Read, facilityId: number): Promise<PersonRow[]> {
  const rows = await read.db.person.findMany({
    where: { active: true, roles: { some: { facilityId } } },
    include: { roles: { where: { facilityId } }, wards: true },
    orderBy: { id: "asc" },
  });
  return rows.map((row) => ({
    personId: row.id,
    name: row.name,
    facilityId,
    roles: row.roles.map((r) => r.role as Role),
    wardIds: row.wards.map((w) => w.wardId),
  }));
}
