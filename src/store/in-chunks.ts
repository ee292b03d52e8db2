/** Prisma refuses a statement with more than 998 parameters on SQLite (P2029), and the rest of it needs some too. */
const chunkSize = 500;

/**
 * Asks about many values, some at a time, one question after another: lists of ids in a `where` have a limit. The
 * answers stand in the order of the values' chunks.
 */
export async function inChunks<Value, Row>(
  values: readonly Value[],
  ask: (chunk: Value[]) => Promise<readonly Row[]>,
): Promise<Row[]> {
  const rows: Row[] = [];
  for (let i = 0; i < values.length; i += chunkSize)
    for (const row of await ask(values.slice(i, i + chunkSize))) rows.push(row);
  return rows;
}
