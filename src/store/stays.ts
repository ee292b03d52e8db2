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

/** The standing catheters of these numbers with the numbers of their standing stays, by the number of the catheter. */
export async function staysOfCatheters(
  read: Read,
  facilityId: number,
  numbers: readonly string[],
): Promise<Map<string, { catheterId: number; stay: string }[]>> {
  const rows = await inChunks(numbers, (chunk) =>
    read.db.catheter.findMany({
      where: { number: { in: chunk }, voidKey: 0, stay: { facilityId, voidKey: 0 } },
      select: { id: true, number: true, stay: { select: { number: true } } },
    }),
  );
  const stays = new Map<string, { catheterId: number; stay: string }[]>();
  for (const { id: catheterId, number, stay } of rows) {
    if (number === null) continue;
    stays.set(number, [...(stays.get(number) ?? []), { catheterId, stay: stay.number }]);
  }
  return stays;
}

/** Which surviving patient each of these stay numbers belongs to; numbers that no standing stay has are left out. */
export async function ownersOfStays(
  read: Read,
  facilityId: number,
  numbers: readonly string[],
): Promise<Map<string, { stayId: number; survivorId: number; identifier: string }>> {
  const rows = await inChunks(numbers, (chunk) =>
    read.db.stay.findMany({
      where: { facilityId, number: { in: chunk }, voidKey: 0 },
      select: { id: true, number: true, patientId: true },
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
      if (!patient) return [];
      const { survivorId, identifier } = patient;
      return [[row.number, { stayId: row.id, survivorId, identifier }]];
    }),
  );
}
