import { type DuckDBAppender, type DuckDBConnection, DuckDBInstance } from "@duckdb/node-api";
import Database from "better-sqlite3";
import type { CensusTable } from "../../src/domain/days/census.ts";

type Kind = "int" | "bigint" | "text";

/** What is read from the SQLite file: the columns that the counting needs, as they stand there. */
const tables: readonly { name: string; columns: Readonly<Record<string, Kind>> }[] = [
  { name: "patient", columns: { id: "int", survivor_id: "int" } },
  {
    name: "stay",
    columns: { id: "int", patient_id: "int", admitted_at: "bigint", discharged_at: "bigint", void_key: "int" },
  },
  {
    name: "ward_stay",
    columns: {
      id: "int",
      stay_id: "int",
      ward_id: "int",
      start_at: "bigint",
      end_at: "bigint",
      absence_after: "text",
      void_key: "int",
    },
  },
  {
    name: "catheter",
    columns: {
      stay_id: "int",
      kind: "text",
      inserted_at: "bigint",
      removed_at: "bigint",
      removed_after_at: "bigint",
      void_key: "int",
    },
  },
  { name: "ward_setting", columns: { ward_id: "int", setting: "text" } },
];

/** A DuckDB in memory with two threads that holds the tables of a history and the censuses of its days. */
export async function loadDuckDb(
  file: string,
  census: CensusTable,
): Promise<{ connection: DuckDBConnection; close: () => void }> {
  const instance = await DuckDBInstance.create(":memory:", { threads: "2" });
  const connection = await instance.connect();
  const database = new Database(file, { readonly: true });
  for (const { name, columns } of tables) {
    const list = Object.entries(columns).map(([column, kind]) => `${column} ${kind === "text" ? "varchar" : kind}`);
    await connection.run(`CREATE TABLE ${name} (${list.join(", ")})`);
    const appender = await connection.createAppender(name);
    const rows = database
      .prepare(`SELECT ${Object.keys(columns).join(", ")} FROM ${name}`)
      .raw()
      .iterate();
    const kinds = Object.values(columns);
    for (const row of rows) {
      for (const [i, cell] of (row as (number | string | null)[]).entries()) append(appender, cell, kinds[i]);
      appender.endRow();
    }
    appender.closeSync();
  }
  database.close();
  await appendCensus(connection, census);
  return {
    connection,
    close: () => {
      connection.closeSync();
      instance.closeSync();
    },
  };
}

function append(appender: DuckDBAppender, cell: number | string | null, kind: Kind | undefined): void {
  if (cell === null) appender.appendNull();
  else if (typeof cell === "string") appender.appendVarchar(cell);
  else if (kind === "bigint") appender.appendBigInt(BigInt(cell));
  else appender.appendInteger(cell);
}

async function appendCensus(connection: DuckDBConnection, { days, instants }: CensusTable): Promise<void> {
  await connection.run("CREATE TABLE census (place int, day int, taken_at bigint)");
  const appender = await connection.createAppender("census");
  for (const [i, day] of days.entries()) {
    appender.appendInteger(i);
    appender.appendInteger(day);
    appender.appendBigInt(BigInt(instants[i] ?? 0));
    appender.endRow();
  }
  appender.closeSync();
}
