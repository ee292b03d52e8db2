import { refuse } from "../../shared/problems.ts";
import type { Stay } from "../domain/timeline/timeline.ts";
import { inChunks } from "./in-chunks.ts";
import type { Read } from "./store.ts";
import { staysWith } from "./timelines.ts";

/** The stay in which a catheter was recorded, with everything in it. Refuses `not-found`. */
export async function stayOfCatheter(read: Read, facilityId: number, catheterId: number): Promise<Stay> {
  const [stay] = await staysWith(read, { facilityId, catheters: { some: { id: catheterId } } });
  return stay ?? refuse("not-found", "There is no such catheter in this facility.");
}

/** The versions of these catheters, by id. */
export async function catheterVersions(read: Read, ids: readonly number[]): Promise<Map<number, number>> {
  const rows = await inChunks(ids, (chunk) =>
    read.db.catheter.findMany({ where: { id: { in: chunk } }, select: { id: true, version: true } }),
  );
  return new Map(rows.map(({ id, version }) => [id, version]));
}

/** The surviving patients to whom these catheters belong, each once. */
export async function patientsOfCatheters(read: Read, ids: readonly number[]): Promise<number[]> {
  const rows = await inChunks(ids, (chunk) =>
    read.db.catheter.findMany({
      where: { id: { in: chunk } },
      select: { stay: { select: { patient: { select: { survivorId: true } } } } },
    }),
  );
  return [...new Set(rows.map(({ stay }) => stay.patient.survivorId))];
}
