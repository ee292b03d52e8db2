import type { Role } from "../../shared/vocabulary.ts";
import { type RowOf, rowsOf } from "./columns.ts";
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
  const active = (await everybody(read, facilityId)).filter((person) => person.active);
  return active.map(({ active: _, ...person }) => person);
}

/** The people of a facility, also those who have left, in the order in which they came. */
export async function everybody(read: Read, facilityId: number): Promise<(PersonRow & { readonly active: boolean })[]> {
  const { where, include } = inFacility(facilityId);
  const rows = await read.db.person.findMany({ where: { roles: where.roles }, include, orderBy: { id: "asc" } });
  return rows.map((row) => ({ ...personFrom(row, facilityId), active: row.active }));
}

/** The first active person of a facility; null when it has none. */
export async function firstPerson(read: Read, facilityId: number): Promise<PersonRow | null> {
  const inIt = "EXISTS (SELECT 1 FROM person_role r WHERE r.person_id = person.id AND r.facility_id = $1)";
  const [person] = await rowsOf(read, personTable, `WHERE active AND ${inIt} ORDER BY id LIMIT 1`, facilityId);
  return person ? withRoles(read, person, facilityId) : null;
}

/** The active person of that number, in the first facility in which they have a role; null when there is none. */
export async function personOf(read: Read, personId: number): Promise<PersonRow | null> {
  const [person] = await rowsOf(read, personTable, "WHERE active AND id = $1", personId);
  const [first] = await rowsOf(read, roleTable, "WHERE person_id = $1 ORDER BY facility_id LIMIT 1", personId);
  return person && first ? withRoles(read, person, first.facilityId) : null;
}

const personTable = { table: "person", columns: { id: "int", name: "text" } } as const;
const roleTable = { table: "person_role", columns: { facilityId: "int", role: "text" } } as const;
const wardTable = { table: "person_ward", columns: { wardId: "int" } } as const;

async function withRoles(
  read: Read,
  { id: personId, name }: RowOf<typeof personTable>,
  facilityId: number,
): Promise<PersonRow> {
  const roles = await rowsOf(read, roleTable, "WHERE person_id = $1 AND facility_id = $2", personId, facilityId);
  const ofFacility = "JOIN ward w ON w.id = person_ward.ward_id AND w.facility_id = $2";
  const wards = await rowsOf(
    read,
    wardTable,
    `${ofFacility} WHERE person_ward.person_id = $1 ORDER BY person_ward.ward_id`,
    ...[personId, facilityId],
  );
  return {
    ...{ personId, name, facilityId, roles: roles.map(({ role }) => role as Role) },
    wardIds: wards.map(({ wardId }) => wardId),
  };
}

/** The names of people by their numbers, of those who left too. */
export async function namesOf(read: Read, personIds: readonly number[]): Promise<Map<number, string>> {
  const where = { id: { in: [...personIds] } };
  const rows = await read.db.person.findMany({ where, select: { id: true, name: true } });
  return new Map(rows.map(({ id, name }) => [id, name]));
}

function inFacility(facilityId: number) {
  return {
    where: { active: true, roles: { some: { facilityId } } },
    include: {
      roles: { where: { facilityId } },
      wards: { where: { ward: { facilityId } }, orderBy: { wardId: "asc" as const } },
    },
  };
}

interface PersonModel {
  readonly id: number;
  readonly name: string;
  readonly roles: readonly { readonly role: string }[];
  readonly wards: readonly { readonly wardId: number }[];
}

function personFrom({ id, name, roles, wards }: PersonModel, facilityId: number): PersonRow {
  return {
    personId: id,
    name,
    facilityId,
    roles: roles.map(({ role }) => role as Role),
    wardIds: wards.map(({ wardId }) => wardId),
  };
}
