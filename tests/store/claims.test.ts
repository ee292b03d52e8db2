import pg from "pg";
import { expect, it } from "vitest";
import { claimsInProcess } from "../../src/store/claims.ts";
import { openStore } from "../../src/store/open-store.ts";
import { freshPostgres, onEachDatabase } from "../databases/databases.ts";
import { faultsOf } from "../databases/refusal.ts";
import { refusingServer } from "../databases/refusing-server.ts";
import { sharedStore } from "../databases/shared-store.ts";

onEachDatabase("a claim", (fresh) => {
  const shared = sharedStore(fresh);

  it("has one holder until it is released, whatever others hold", async () => {
    const { store } = shared;
    const mine = await store.claim(41);
    expect(mine).not.toBeNull();
    expect(await store.claim(41)).toBeNull();
    const other = await store.claim(42);
    expect(other).not.toBeNull();
    await mine?.release();
    const again = await store.claim(41);
    expect(again).not.toBeNull();
    await Promise.all([again?.release(), other?.release()]);
  });

  it("is got by one of many that ask at once", async () => {
    const asked = await Promise.all(Array.from({ length: 8 }, () => shared.store.claim(43)));
    const got = asked.filter((claim) => claim !== null);
    expect(got).toHaveLength(1);
    await got[0]?.release();
  });

  it("waits for no transaction, and stops none", async () => {
    const held = await shared.store.tx(async () => shared.store.claim(44));
    expect(await shared.store.tx(async () => shared.store.claim(44))).toBeNull();
    await held?.release();
  });
});

it("claims of one process are known to those alone who share them", async () => {
  const [one, other] = [claimsInProcess(), claimsInProcess()];
  const claims = [await one(1), await other(1), await one(1)];
  expect(claims.map((claim) => claim !== null)).toEqual([true, true, false]);
});

async function rowsOn(url: string, sql: string, values: readonly number[] = []): Promise<number> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rowCount } = await client.query(sql, [...values]);
  await client.end();
  return rowCount ?? 0;
}

/** Ends the connection that holds a claim on a database, as the end of its process would. */
const cutOff = (url: string, id: number) =>
  rowsOn(
    url,
    `SELECT pg_terminate_backend(pid) FROM pg_locks WHERE locktype = 'advisory' AND objid = $1
     AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
    [id],
  );

/** How many connections others have to a database. */
const connections = (url: string) =>
  rowsOn(url, "SELECT FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()");

it("a claim on a server is not had by another program, and ends with the connection that holds it", async () => {
  const database = await freshPostgres();
  const [one, other] = [openStore(database.url), openStore(database.url)];
  const claim = await one.claim(7);
  expect(await other.claim(7)).toBeNull();
  // Who gets no claim keeps no connection.
  await expect.poll(() => connections(database.url), { timeout: 10_000 }).toBe(1);
  expect(await cutOff(database.url, 7)).toBe(1);
  await expect.poll(() => other.claim(7), { timeout: 10_000 }).not.toBeNull();
  // Its holder can still let go of what it lost, and does not take it from the new one.
  await claim?.release();
  expect(await one.claim(7)).toBeNull();
  await cutOff(database.url, 7);
  await Promise.all([one.close(), other.close()]);
  await database.drop();
});

it("a claim on a server that takes no more connections is refused by name", async () => {
  const server = await refusingServer({ code: "53300", message: "sorry, too many clients already" });
  const store = openStore(`postgresql://postgres@127.0.0.1:${server.port}/postgres`);
  expect(await faultsOf(() => store.claim(7))).toMatchObject([{ code: "database-unreachable" }]);
  await store.close();
  await server.close();
});
