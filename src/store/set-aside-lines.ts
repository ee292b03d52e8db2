import type { LineOutcome, StagedLine } from "./import-lines.ts";
import type { Read, Tx } from "./store.ts";

/** Where a line stands. */
export interface LinePlace {
  readonly importId: number;
  readonly file: string;
  readonly line: number;
}

/**
 * Takes a line that was set aside, so that nobody else settles it meanwhile. Gives its text; null when the import has no
 * such line any more.
 */
export async function takeSetAside(tx: Tx, place: LinePlace): Promise<string | null> {
  const { importId, file, line } = place;
  const { count } = await tx.db.importLine.updateMany({
    where: { importId, file, line, state: "refused" },
    data: { state: "staged" },
  });
  if (count === 0) return null;
  const key = { importId_file_line: { importId, file, line } };
  const row = await tx.db.importLine.findUniqueOrThrow({ where: key, select: { content: true } });
  return row.content ?? "";
}

/** Puts what a line says by now in the place of what it said. */
export async function restageLine(tx: Tx, { importId }: { importId: number }, staged: StagedLine): Promise<void> {
  const { file, line, state, groupKey, fingerprint, entryKey, content } = staged;
  await tx.db.importLine.update({
    where: { importId_file_line: { importId, file, line } },
    data: { state, groupKey, fingerprint, entryKey, content },
  });
}

/** Writes down who settled a line that was set aside, and keeps the text that was refused. */
export async function noteSettled(
  tx: Tx,
  { importId, file, line }: LinePlace,
  by: { personId: number; now: number; text: string | null; dropped?: { reason: string } },
): Promise<void> {
  await tx.db.importLine.update({
    where: { importId_file_line: { importId, file, line } },
    data: {
      settledBy: by.personId,
      settledAt: new Date(by.now),
      content: by.text,
      ...(by.dropped ? { state: "dropped", reason: by.dropped.reason } : {}),
    },
  });
}

/** How many lines of each file of an import are in each state. */
export async function countByFile(
  read: Read,
  importId: number,
): Promise<{ file: string; state: LineOutcome["outcome"]["state"] | "staged" | "dropped" | "blank"; count: number }[]> {
  const rows = await read.db.importLine.groupBy({
    by: ["file", "state"],
    where: { importId },
    orderBy: [{ file: "asc" }, { state: "asc" }],
    _count: true,
  });
  return rows.map(({ file, state, _count }) => ({ file, state: state as "staged", count: _count }));
}

/** Whether a file of an import broke off: its fault stands at line 0. */
export async function hasBrokenFile(read: Read, importId: number): Promise<boolean> {
  return (await read.db.importLine.count({ where: { importId, line: 0, state: "refused" } })) > 0;
}
