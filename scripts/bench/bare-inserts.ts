import Database from "better-sqlite3";
import pg from "pg";
import { type Latencies, spread } from "./http-client.ts";

/** Durable inserts of one row each, by nothing but the driver: the least that recording anything can cost. */
export interface BareInserts {
  measure(options: { clients: number; count: number }): Promise<Omit<Latencies, "bytes">>;
  close(): Promise<void>;
}

/** Into a SQLite file with the settings of the product: one writer, each commit forced to disk. */
export function bareSqlite(file: string): BareInserts {
  const database = new Database(file);
  for (const pragma of ["journal_mode = WAL", "synchronous = FULL"]) database.pragma(pragma);
  database.exec("CREATE TABLE bare (id INTEGER PRIMARY KEY, text TEXT)");
  const insert = database.prepare("INSERT INTO bare (text) VALUES (?)");
  return {
    measure: async ({ count }) => timed(count, 1, async () => void insert.run("a review of a catheter")),
    close: async () => void database.close(),
  };
}

/** Into a PostgreSQL database, from a pool as large as the product's. */
export async function barePostgres(url: string): Promise<BareInserts> {
  const pool = new pg.Pool({ connectionString: url, max: 12 });
  await pool.query("CREATE TABLE bare (id SERIAL PRIMARY KEY, text TEXT)");
  const insert = { name: "bare", text: "INSERT INTO bare (text) VALUES ($1)", values: ["a review of a catheter"] };
  return {
    measure: ({ clients, count }) => timed(count, clients, async () => void (await pool.query(insert))),
    close: () => pool.end(),
  };
}

async function timed(count: number, clients: number, insert: () => Promise<void>): Promise<Omit<Latencies, "bytes">> {
  const took: number[] = [];
  let next = 0;
  const client = async () => {
    while (next++ < count) {
      const began = performance.now();
      await insert();
      took.push((performance.now() - began) / 1000);
    }
  };
  const began = performance.now();
  await Promise.all(Array.from({ length: clients }, client));
  return { ...spread(took), perSecond: count / ((performance.now() - began) / 1000) };
}
