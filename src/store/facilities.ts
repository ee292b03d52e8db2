import type { CensusTime } from "../../shared/day.ts";
import { refuse } from "../../shared/problems.ts";
import type { CensusChange } from "../domain/days/census.ts";
import { type RowOf, rowsOf } from "./columns.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

export interface FacilityRow {
  readonly id: number;
  readonly name: string;
  readonly zone: string;
  /** The fictional hospital. */
  readonly demo: boolean;
  readonly version: number;
  readonly census: readonly (CensusChange & { readonly id: number; readonly version: number })[];
}

const facilityTable = {
  table: "facility",
  columns: { id: "int", name: "text", zone: "text", demo: "bool", version: "int" },
} as const;
const censusTable = {
  table: "facility_census",
  columns: { id: "int", fromDay: "int", time: "text", version: "int" },
} as const;

/** A facility with its census times. Refuses `not-found`. */
export async function facility(read: Read, id: number): Promise<FacilityRow> {
  const [row] = await rowsOf(read, facilityTable, "WHERE id = $1", id);
  return row ? withCensus(read, row) : refuse("not-found", "There is no such facility.");
}

async function withCensus(read: Read, row: RowOf<typeof facilityTable>): Promise<FacilityRow> {
  const census = await rowsOf(read, censusTable, "WHERE facility_id = $1 ORDER BY from_day", row.id);
  return { ...row, census: census.map((one) => ({ ...one, time: one.time as CensusTime })) };
}

/** The facilities of the installation, by id. */
export async function facilities(read: Read): Promise<FacilityRow[]> {
  const rows = await rowsOf(read, facilityTable, "ORDER BY id");
  const found: FacilityRow[] = [];
  for (const row of rows) found.push(await withCensus(read, row));
  return found;
}

/** Takes the facility's row: no patient is written while its counting rules change. */
export async function lockFacility(tx: Tx, id: number): Promise<FacilityRow> {
  await tx.db.facility.updateMany({ where: { id }, data: { version: { increment: 1 } } });
  return facility(tx, id);
}

/** A new facility with its first census time, in force from the first day on. */
export async function addFacility(
  tx: Tx,
  by: Recording,
  facility: { name: string; zone: string; censusTime: CensusTime; demo?: boolean },
): Promise<void> {
  const recordedAt = new Date(by.now);
  await tx.db.facility.create({
    data: { id: by.facilityId, name: facility.name, zone: facility.zone, demo: facility.demo ?? false, recordedAt },
  });
  await addCensus(tx, by, { fromDay: 0, time: facility.censusTime });
}

/** A census time from a day on. */
export async function addCensus(tx: Tx, by: Recording, change: CensusChange): Promise<number> {
  const id = tx.newId();
  const { facilityId, personId } = by;
  await tx.db.facilityCensus.create({
    data: { id, facilityId, ...change, recordedAt: new Date(by.now), recordedBy: personId },
  });
  return id;
}

/** Replaces a census time of the same day. */
export async function replaceCensus(tx: Tx, by: Recording, census: { id: number; time: CensusTime }): Promise<void> {
  await tx.db.facilityCensus.update({
    where: { id: census.id },
    data: { time: census.time, version: { increment: 1 }, recordedAt: new Date(by.now), recordedBy: by.personId },
  });
}

/** Name and zone of a facility. */
export async function updateFacility(tx: Tx, id: number, changes: { name?: string; zone?: string }): Promise<void> {
  // Every month is printed under the name.
  touchDays(tx, { first: 0, last: null });
  await tx.db.facility.update({ where: { id }, data: changes });
}

/** Whether anything was ever admitted to the facility; voided stays count too. */
export async function hasStays(read: Read, facilityId: number): Promise<boolean> {
  return (await read.db.stay.findFirst({ where: { facilityId }, select: { id: true } })) !== null;
}
