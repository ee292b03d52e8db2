import { readFileSync } from "node:fs";
import { join } from "node:path";
import Database, { type Statement } from "better-sqlite3";
import { timed } from "./bench-line.ts";

/** What inserting the lines of a folder as they stand took; reading the files is not part of it. */
export interface BareInsert {
  readonly lines: number;
  readonly seconds: number;
}

/** Inserts every line of these files, cell by cell as text, with prepared statements in that many commits. */
export async function insertLines(
  { folder, files, database }: { folder: string; files: readonly string[]; database: string },
  commits: number,
): Promise<BareInsert> {
  const db = new Database(database);
  db.pragma("journal_mode = WAL");
  db.pragma("synchronous = FULL");
  const rows = files.flatMap((name) => rowsOf(db, folder, name));
  const batch = Math.max(1, Math.ceil(rows.length / commits));
  const insert = db.transaction((some: readonly Row[]) => {
    for (const { into, cells } of some) into.run(cells);
  });
  const { seconds } = await timed(() => {
    for (let i = 0; i < rows.length; i += batch) insert(rows.slice(i, i + batch));
  });
  const count = (name: string) => db.prepare(`SELECT count(*) FROM "${name}"`).pluck().get() as number;
  const lines = files.reduce((sum, name) => sum + count(name), 0);
  db.close();
  return { lines, seconds };
}

interface Row {
  readonly into: Statement;
  readonly cells: readonly string[];
}

function rowsOf(db: Database.Database, folder: string, name: string): Row[] {
  const [header = "", ...lines] = readFileSync(join(folder, name), "utf8").trimEnd().split("\n");
  const columns = header.split(",");
  db.exec(`CREATE TABLE "${name}" (${columns.map((column) => `"${column}" TEXT`).join(", ")})`);
  const into = db.prepare(`INSERT INTO "${name}" VALUES (${columns.map(() => "?").join(", ")})`);
  return lines.map((line) => ({ into, cells: line.split(",") }));
}
