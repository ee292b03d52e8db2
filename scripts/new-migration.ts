/**
 * Writes the next migration of both databases from the difference between the committed ones and prisma/schema.prisma:
 * `npm run migration -- NAME`. The engine needs a reachable PostgreSQL even to compare: TEST_POSTGRES_URL names one.
 */
import { randomUUID } from "node:crypto";
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import pg from "pg";
import { committedMigrations, migrate } from "../src/store/migrate.ts";
import { LedgerSqlite } from "../src/store/sqlite-adapter.ts";
import { CataloguePostgres, type Provider, schemaDiff } from "./schema-diff.ts";

async function sqliteDifference(): Promise<string> {
  const file = join(mkdtempSync(join(tmpdir(), "migration-")), "now.sqlite");
  await migrate(file);
  return schemaDiff("sqlite", new LedgerSqlite(file, { readonly: false }));
}

async function postgresDifference(server: string): Promise<string> {
  const name = `migration_${randomUUID().replaceAll("-", "")}`;
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  await client.query(`CREATE DATABASE ${name}`);
  const url = new URL(server);
  url.pathname = name;
  await migrate(url.href);
  const sql = await schemaDiff("postgresql", new CataloguePostgres({ connectionString: url.href }));
  await client.query(`DROP DATABASE ${name} WITH (FORCE)`);
  await client.end();
  return sql;
}

function write(provider: Provider, name: string, sql: string): void {
  const number = String(committedMigrations(provider).length + 1).padStart(4, "0");
  const folder = fileURLToPath(new URL(`../prisma/migrations/${provider}/${number}_${name}/`, import.meta.url));
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "migration.sql"), sql);
  process.stdout.write(`wrote ${folder}\n`);
}

const name = process.argv[2];
const server = process.env.TEST_POSTGRES_URL;
if (!name || !/^[a-z0-9_]+$/.test(name) || !server) {
  process.stderr.write("Usage: TEST_POSTGRES_URL=… npm run migration -- name_of_the_change\n");
  process.exit(2);
}
const found = { sqlite: await sqliteDifference(), postgresql: await postgresDifference(server) };
if (found.sqlite === "" && found.postgresql === "")
  process.stdout.write("Nothing to do: the schema has not changed.\n");
for (const provider of ["sqlite", "postgresql"] as const)
  if (found[provider] !== "") write(provider, name, found[provider]);
