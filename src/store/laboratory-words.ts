import type { WordColumn } from "../../shared/laboratory-words.ts";
import { type LaboratoryWord, openWordings } from "../domain/cultures/laboratory-words.ts";
import type { RecordedSpecimen } from "../domain/cultures/specimen.ts";
import { idList, insertRows } from "./bulk.ts";
import { parametersFor } from "./parameters.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/** Every version of every choice of a facility, by wording and number. */
export async function wordsOfFacility(read: Read, facilityId: number): Promise<LaboratoryWord[]> {
  return versionsWhere(read, { facilityId });
}

/** Those of them whose past specimens are not all determined again. */
export async function unfinishedWords(read: Read, facilityId: number): Promise<LaboratoryWord[]> {
  return versionsWhere(read, { facilityId, pastAfter: { not: null } });
}

async function versionsWhere(
  read: Read,
  where: { facilityId: number; pastAfter?: { not: null } },
): Promise<LaboratoryWord[]> {
  const rows = await read.db.laboratoryWord.findMany({
    where,
    orderBy: [{ column: "asc" }, { wording: "asc" }, { number: "asc" }],
  });
  return rows.map(({ facilityId: _, column, recordedAt, ...row }) => ({
    ...row,
    column: column as WordColumn,
    recordedAt: recordedAt.getTime(),
  }));
}

/** Stores up to which patient past specimens of a choice are determined again; null: all are. */
export async function setPastAfter(tx: Tx, id: number, pastAfter: number | null): Promise<void> {
  await tx.db.laboratoryWord.update({ where: { id }, data: { pastAfter } });
}

/** Adds a version of a choice; answers with its id. */
export async function addWord(
  tx: Tx,
  by: Recording,
  { column, wording, number, choice, isForPast, pastAfter }: Omit<LaboratoryWord, "id" | "recordedAt" | "recordedBy">,
): Promise<number> {
  const id = tx.newId();
  const { facilityId, personId: recordedBy, now } = by;
  const word = { column, wording, number, choice, isForPast, pastAfter };
  await tx.db.laboratoryWord.create({ data: { id, facilityId, ...word, recordedBy, recordedAt: new Date(now) } });
  return id;
}

/** A wording of specimens that stand, with how many have it. */
export interface SeenWording {
  readonly column: WordColumn;
  readonly wording: string;
  readonly specimens: number;
}

/** The wordings of a facility's specimens that are not read by themselves. Counts over the index of such wordings alone. */
export async function seenWordings(read: Read, facilityId: number): Promise<SeenWording[]> {
  const rows = await read.sql.rows<{ about: string; wording: string; found: number | bigint }>(
    `SELECT w.column_name AS about, w.wording AS wording, COUNT(*) AS found FROM specimen_wording w
       JOIN specimen m ON m.id = w.specimen_id AND m.void_key = 0
       JOIN patient p ON p.id = m.patient_id
      WHERE p.facility_id = $1 GROUP BY 1, 2 ORDER BY 1, 2`,
    facilityId,
  );
  return rows.map(({ about, wording, found }) => ({
    ...{ column: about as WordColumn, wording, specimens: Number(found) },
  }));
}

/** How many specimens have the wording of a choice, and how many are determined again; null where none are left. */
export async function pastProgress(
  read: Read,
  facilityId: number,
  { column, wording, pastAfter }: LaboratoryWord,
): Promise<{ determined: number; specimens: number } | null> {
  if (pastAfter === null) return null;
  const { values, given } = parametersFor(read);
  const [row] = await read.sql.rows<{ determined: number | bigint | null; specimens: number | bigint }>(
    `SELECT SUM(CASE WHEN p.survivor_id <= ${given(pastAfter, "int")} THEN 1 ELSE 0 END) AS determined, COUNT(*) AS specimens
       FROM specimen_wording w JOIN specimen m ON m.id = w.specimen_id AND m.void_key = 0
       JOIN patient p ON p.id = m.patient_id
      WHERE w.column_name = ${given(column, "text")} AND w.wording = ${given(wording, "text")}
        AND p.facility_id = ${given(facilityId, "int")}`,
    ...values,
  );
  return { determined: Number(row?.determined ?? 0), specimens: Number(row?.specimens ?? 0) };
}

/** The next surviving patients of a facility whose specimens have a wording, in the order of ids. */
export async function patientsWithWording(
  read: Read,
  facilityId: number,
  { column, wording, after, count }: { column: WordColumn; wording: string; after: number; count: number },
): Promise<number[]> {
  const { values, given } = parametersFor(read);
  const rows = await read.sql.rows<{ id: number | bigint }>(
    `SELECT DISTINCT p.survivor_id AS id FROM specimen_wording w
       JOIN specimen m ON m.id = w.specimen_id JOIN patient p ON p.id = m.patient_id
      WHERE w.column_name = ${given(column, "text")} AND w.wording = ${given(wording, "text")}
        AND p.facility_id = ${given(facilityId, "int")} AND p.survivor_id > ${given(after, "int")}
      ORDER BY 1 LIMIT ${Math.trunc(count)}`,
    ...values,
  );
  return rows.map(({ id }) => Number(id));
}

const table = {
  table: "specimen_wording",
  columns: { column_name: "text", wording: "text", specimen_id: "int" },
} as const;

/** Writes down which wordings of specimens are not read by themselves, in the place of what was written down before. */
export async function replaceWordings(
  tx: Tx,
  specimens: readonly Pick<RecordedSpecimen, "id" | "organisms">[],
): Promise<void> {
  if (specimens.length === 0) return;
  const ids = JSON.stringify(specimens.map(({ id }) => id));
  await tx.sql.run(`DELETE FROM specimen_wording WHERE specimen_id IN ${idList(tx, 1)}`, ids);
  await addWordings(tx, specimens);
}

/** The same of specimens that are new. */
export async function addWordings(
  tx: Tx,
  specimens: readonly Pick<RecordedSpecimen, "id" | "organisms">[],
): Promise<void> {
  const rows = specimens.flatMap(({ id, organisms }) =>
    openWordings(organisms).map(({ column, wording }) => [column, wording, id]),
  );
  if (rows.length > 0) await insertRows(tx, table, rows);
}
