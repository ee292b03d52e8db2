import type { Read } from "./store.ts";

/** Ids of patients of a facility after `after`, merged ones too, in order. */
export async function patientPage(read: Read, facilityId: number, after: number, count: number): Promise<number[]> {
  const rows = await read.db.patient.findMany({
    where: { facilityId, id: { gt: after } },
    select: { id: true },
    orderBy: { id: "asc" },
    take: count,
  });
  return rows.map((row) => row.id);
}
