import type { Read, Tx } from "./store.ts";

/** A file that somebody sent. */
export interface SentFile {
  readonly name: string;
  readonly text: string;
}

/** Puts the files of an import down, to be read later. */
export async function addFiles(tx: Tx, importId: number, files: readonly SentFile[]): Promise<void> {
  await tx.db.importFile.createMany({
    data: files.map(({ name, text }, number) => ({ importId, number, name, text })),
  });
}

/** The files of an import that were not read to their end yet, as they were sent. */
export async function filesToRead(read: Read, importId: number): Promise<SentFile[]> {
  const rows = await read.db.importFile.findMany({
    where: { importId, text: { not: null } },
    orderBy: { number: "asc" },
  });
  return rows.map(({ name, text }) => ({ name, text: text ?? "" }));
}

/** Whether files of an import wait to be read. */
export async function hasFilesToRead(read: Read, importId: number): Promise<boolean> {
  return (await read.db.importFile.count({ where: { importId, text: { not: null } } })) > 0;
}

/** Drops the texts of an import that was read; the header of each file stays, by the file's place among them. */
export async function forgetTexts(tx: Tx, importId: number, headers: readonly (string | null)[]): Promise<void> {
  for (const [number, header] of headers.entries())
    await tx.db.importFile.updateMany({ where: { importId, number }, data: { text: null, header } });
}

/** The headers of an import's files by their names; only of those that were read and have one. */
export async function headersOf(read: Read, importId: number): Promise<Map<string, string>> {
  const rows = await read.db.importFile.findMany({ where: { importId }, orderBy: { number: "asc" } });
  return new Map(rows.flatMap(({ name, header }) => (header === null ? [] : [[name, header] as const])));
}
