import { createHash, randomUUID } from "node:crypto";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import pg from "pg";
import { describe } from "vitest";
import { committedMigrations, migrate } from "../../src/store/migrate.ts";
import type { DatabaseKind } from "../../src/store/store.ts";
import { quickFolder } from "./quick-folder.ts";

/** A fresh migrated database of a test's own. */
export interface TestDatabase {
  readonly kind: DatabaseKind;
  readonly url: string;
  drop(): Promise<void>;
}

/** The PostgreSQL server that the test command started. Its absence is a failure, not a reason to skip. */
export function postgresServer(): string {
  const url = process.env.TEST_POSTGRES_URL;
  if (!url) throw new Error("TEST_POSTGRES_URL is not set: run the tests by `npm test`, which starts a PostgreSQL");
  return url;
}

/** The databases that the tests run on; `DATABASES=sqlite npm test` narrows them while developing. */
const databaseKinds = (process.env.DATABASES ?? "sqlite,postgresql").split(",") as DatabaseKind[];

/** The same tests on each real database. */
export function onEachDatabase(title: string, tests: (fresh: () => Promise<TestDatabase>, kind: DatabaseKind) => void) {
  for (const kind of databaseKinds)
    describe(`${title} (${kind})`, () => tests(kind === "sqlite" ? freshSqlite : freshPostgres, kind));
}

let sqliteTemplate: Promise<Buffer> | undefined;
let postgresTemplate: Promise<string> | undefined;

/** A copy of one migrated file, in a folder of its own. */
export async function freshSqlite(): Promise<TestDatabase> {
  sqliteTemplate ??= (async () => {
    const folder = quickFolder("dwell-template-");
    const file = join(folder, "template.sqlite");
    await migrate(file);
    const bytes = readFileSync(file);
    rmSync(folder, { recursive: true });
    return bytes;
  })();
  const folder = quickFolder("dwell-test-");
  const url = join(folder, "ledger.sqlite");
  writeFileSync(url, await sqliteTemplate);
  return { kind: "sqlite", url, drop: async () => rmSync(folder, { recursive: true, force: true }) };
}

/** A copy of one migrated database on the test server. */
export async function freshPostgres(): Promise<TestDatabase> {
  postgresTemplate ??= ensureTemplate();
  const template = await postgresTemplate;
  const name = `test_${randomUUID().replaceAll("-", "")}`;
  await onServer((client) => client.query(`CREATE DATABASE ${name} TEMPLATE ${template}`));
  const drop = () =>
    onServer(async (client) => void (await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`)));
  return { kind: "postgresql", url: urlOf(name), drop };
}

/** The migrated database that all test files copy, named by its migrations; made by whoever comes first. */
async function ensureTemplate(): Promise<string> {
  const checksums = committedMigrations("postgresql").map((m) => m.checksum);
  const template = `template_${createHash("sha256").update(checksums.join()).digest("hex").slice(0, 32)}`;
  await onServer(async (client) => {
    await client.query("SELECT pg_advisory_lock(1)");
    const { rowCount } = await client.query("SELECT FROM pg_database WHERE datname = $1", [template]);
    if (rowCount) return;
    // Renamed at the end, so that one which broke off is never taken for a template.
    const building = `building_${randomUUID().replaceAll("-", "")}`;
    await client.query(`CREATE DATABASE ${building}`);
    await migrate(urlOf(building));
    await client.query(`ALTER DATABASE ${building} RENAME TO ${template}`);
  });
  return template;
}

function urlOf(database: string): string {
  const url = new URL(postgresServer());
  url.pathname = database;
  return url.href;
}

async function onServer<T>(work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: postgresServer() });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
