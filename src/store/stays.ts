import { inChunks } from "./in-chunks.ts";
import type { Read } from "./store.ts";

/** The id of the stay that has this number, or null. A voided stay frees its number. */
export async function stayNumberTaken(read: Read, facilityId: number, number: string): Promise<number | null> {
  const stay = await read.db.stay.findUnique({
    where: { facilityId_number_voidKey: { facilityId, number, voidKey: 0 } },
    select: { id: true },
  });
  return stay?.id ?? null;
}

/** Which surviving patient each of these stay numbers belongs to; numbers that no standing stay has are left out. */
export async function ownersOfStays(
  read: Read,
  facilityId: number,
  numbers: readonly string[],
): Promise<Map<string, { survivorId: number; identifier: string }>> {
  const rows = await inChunks(numbers, (chunk) =>
    read.db.stay.findMany({
      where: { facilityId, number: { in: chunk }, voidKey: 0 },
      select: { number: true, patientId: true },
    }),
  );
  const patients = await inChunks([...new Set(rows.map((row) => row.patientId))], (chunk) =>
    read.db.patient.findMany({
      where: { id: { in: chunk } },
      select: { id: true, survivorId: true, identifier: true },
    }),
  );
  const byId = new Map(patients.map((patient) => [patient.id, patient]));
  return new Map(
    rows.flatMap((row) => {
      const patient = byId.get(row.patientId);
      return patient ? [[row.number, { survivorId: patient.survivorId, identifier: patient.identifier }]] : [];
    }),
  );
}
