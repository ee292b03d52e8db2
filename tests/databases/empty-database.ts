import { randomUUID } from "node:crypto";
import { rmSync } from "node:fs";
import { join } from "node:path";
import type { DatabaseKind } from "../../src/store/store.ts";
import { postgresServer, type TestDatabase } from "./databases.ts";
import { quickFolder } from "./quick-folder.ts";
import { rawQuery } from "./raw-query.ts";

/** A database without any table: for SQLite a file that does not exist yet. */
export async function emptyDatabase(kind: DatabaseKind): Promise<TestDatabase> {
  if (kind === "sqlite") {
    const folder = quickFolder("dwell-empty-");
    const drop = async () => rmSync(folder, { recursive: true, force: true });
    return { kind, url: join(folder, "ledger.sqlite"), drop };
  }
  const name = `empty_${randomUUID().replaceAll("-", "")}`;
  await rawQuery(postgresServer(), `CREATE DATABASE ${name}`);
  const url = new URL(postgresServer());
  url.pathname = name;
  const drop = async () => void (await rawQuery(postgresServer(), `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`));
  return { kind, url: url.href, drop };
}
