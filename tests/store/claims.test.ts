import { expect, it } from "vitest";
import { openStore } from "../../src/store/open-store.ts";
import { freshPostgres, onEachDatabase } from "../databases/databases.ts";
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
});

it("a claim on a server is not had by another program, and ends with the connection that holds it", async () => {
  const database = await freshPostgres();
  const [one, other] = [openStore(database.url), openStore(database.url)];
  const claim = await one.claim(7);
  expect(await other.claim(7)).toBeNull();
  await claim?.release();
  const taken = await other.claim(7);
  expect(taken).not.toBeNull();
  await taken?.release();
  await Promise.all([one.close(), other.close()]);
  await database.drop();
});
