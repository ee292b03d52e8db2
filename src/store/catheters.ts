import { refuse } from "../../shared/problems.ts";
import { noHourOfRemoval } from "../domain/timeline/removal-within-day.ts";
import type { Stay } from "../domain/timeline/timeline.ts";
import { rowsOf } from "./columns.ts";
import { inChunks } from "./in-chunks.ts";
import { ownedStays } from "./owned-stays.ts";
import { columnCells, type Rows, readRows } from "./read-rows.ts";
import type { Read } from "./store.ts";

/** The stay in which a catheter was recorded, with everything in it. Refuses `not-found`. */
export async function stayOfCatheter(read: Read, facilityId: number, catheterId: number): Promise<Stay> {
  const [owned] = await ownedStays(read, "catheter", [catheterId]);
  if (owned?.facilityId !== facilityId) return refuse("not-found", "There is no such catheter in this facility.");
  return owned.stay;
}

const markTable = { table: "catheter", columns: { marks: "text" } } as const;

/** Whether a removal of the catheter is recorded by its day alone. */
export async function hasHourlessRemoval(read: Read, catheterId: number): Promise<boolean> {
  const [found] = await rowsOf(read, markTable, "WHERE id = $1", catheterId);
  return found?.marks.split(" ").includes(noHourOfRemoval) ?? false;
}

/** The versions of these catheters, by id. */
export async function catheterVersions(read: Read, ids: readonly number[]): Promise<Map<number, number>> {
  const rows = await readRows(read, versionRows, ids);
  return new Map(rows.map(([id, version]) => [Number(id), Number(version)]));
}

const versionRows: Rows = {
  cells: columnCells("c", ["id", "version"]),
  joins: [{ table: "catheter c", on: "c.id = given.value" }],
};

/** The surviving patients to whom these catheters of a facility belong, each once. */
export async function patientsOfCatheters(read: Read, facilityId: number, ids: readonly number[]): Promise<number[]> {
  return patientIdsOf(await ownersOfCatheters(read, facilityId, ids));
}

/** Who has a catheter: the surviving patient, with the number in the hospital. */
export interface CatheterOwner {
  readonly patientId: number;
  readonly identifier: string;
}

/** The patients among owners, each once. */
export function patientIdsOf(owners: ReadonlyMap<number, CatheterOwner>): number[] {
  return [...new Set([...owners.values()].map(({ patientId }) => patientId))];
}

/** The owner of each of these catheters of a facility. */
export async function ownersOfCatheters(
  read: Read,
  facilityId: number,
  ids: readonly number[],
): Promise<Map<number, CatheterOwner>> {
  const rows = await inChunks(ids, (chunk) =>
    read.db.catheter.findMany({
      where: { id: { in: chunk }, stay: { facilityId } },
      select: {
        id: true,
        stay: { select: { patient: { select: { survivor: { select: { id: true, identifier: true } } } } } },
      },
    }),
  );
  return new Map(
    rows.map(({ id, stay }) => {
      const { id: patientId, identifier } = stay.patient.survivor;
      return [id, { patientId, identifier }];
    }),
  );
}
