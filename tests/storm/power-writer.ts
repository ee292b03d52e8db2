/**
 * Writes one number after another in transactions of their own, through the adapter that the store uses, and says each
 * after it was committed. With `NORMAL` as second argument the commits are not forced to disk, to show that the test
 * of power cuts can fail.
 */
import type { Database } from "better-sqlite3";
import { PrismaClient } from "../../src/store/generated/sqlite/client.ts";
import { LedgerSqlite } from "../../src/store/sqlite-adapter.ts";

class Careless extends LedgerSqlite {
  override async connect(): ReturnType<LedgerSqlite["connect"]> {
    const adapter = await super.connect();
    (adapter as unknown as { client: Database }).client.pragma("synchronous = NORMAL");
    return adapter;
  }
}

const [file = "", mode = "FULL"] = process.argv.slice(2);
const Adapter = mode === "NORMAL" ? Careless : LedgerSqlite;
const client = new PrismaClient({ adapter: new Adapter(file, { readonly: false }) });
for (let next = 1; ; next++) {
  await client.$transaction((tx) => tx.idBlock.create({ data: { name: `written-${next}`, next } }));
  process.stdout.write(`${next}\n`);
}
