import { expect, it } from "vitest";
import { dropAnswers, keepAnswer, takeKey } from "../../src/store/idempotency.ts";
import { openStore } from "../../src/store/open-store.ts";
import type { Tx } from "../../src/store/store.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { gate } from "../databases/gate.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("keys of creations", (fresh, kind) => {
  const shared = sharedStore(fresh);
  const now = utc("2024-03-01 08:00");
  let keys = 0;
  const owner = async () => ({ personId: (await alderBay(shared.store)).personId, key: `key-${++keys}` });
  type Owner = Awaited<ReturnType<typeof owner>>;
  const create = async (tx: Tx, of: Owner, body: string, at = now) => {
    const first = await takeKey(tx, of, { requestHash: `hash of ${body}`, now: at });
    if (first === null) await keepAnswer(tx, of, body);
    return first;
  };
  const once = (of: Owner, body: string, at = now) => shared.store.tx((tx) => create(tx, of, body, at));

  it("are taken once, and give the first answer from then on", async () => {
    const of = await owner();
    expect(await once(of, "one")).toBeNull();
    const first = { requestHash: "hash of one", body: "one" };
    expect(await once(of, "one")).toEqual(first);
    expect(await once(of, "two")).toEqual(first);
  });

  it("belong to a person: the same key of another one is free", async () => {
    const of = await owner();
    const other = await owner();
    await once(of, "one");
    expect(await once({ ...other, key: of.key }, "two")).toBeNull();
    expect(await once({ ...of, key: other.key }, "three")).toBeNull();
  });

  it("are free again when what they were taken for fails", async () => {
    const of = await owner();
    const failing = shared.store.tx(async (tx) => {
      await create(tx, of, "one");
      throw new Error("refused");
    });
    await expect(failing).rejects.toThrow("refused");
    expect(await once(of, "two")).toBeNull();
  });

  it.each(["is done", "fails"])("let the second wait until the first %s", async (end) => {
    const of = await owner();
    // SQLite has one process, and all of it is this store; PostgreSQL has programs with a store each.
    const other = kind === "sqlite" ? shared.store : openStore(shared.url);
    const [taken, mayEnd] = [gate(), gate()];
    const first = shared.store.tx(async (tx) => {
      await create(tx, of, "one");
      taken.open();
      await mayEnd.opened;
      if (end === "fails") throw new Error("the first failed");
    });
    const ended = first.then(
      () => "is done",
      () => "fails",
    );
    await taken.opened;
    let answered = false;
    const second = other
      .tx((tx) => create(tx, of, "two"))
      .finally(() => {
        answered = true;
      });
    if (kind === "postgresql") await waiting();
    else await new Promise(setImmediate);
    expect(answered).toBe(false);
    mayEnd.open();
    expect(await ended).toBe(end);
    expect(await second).toEqual(end === "fails" ? null : { requestHash: "hash of one", body: "one" });
    if (kind === "postgresql") await other.close();
  });

  /** Until the database itself says that somebody waits for a lock. */
  async function waiting(): Promise<void> {
    const asked =
      "SELECT count(*) AS n FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'";
    await expect.poll(async () => Number((await rawQuery(shared.url, asked))[0]?.n)).toBe(1);
  }

  it("and their answers are dropped when they are older than an instant", async () => {
    const [old, kept] = [await owner(), await owner()];
    await once(old, "old", now - 1);
    await once(kept, "kept", now);
    await shared.store.tx((tx) => dropAnswers(tx, now - 1));
    expect(await once(old, "again", now - 1)).toMatchObject({ body: "old" });
    expect(await shared.store.tx((tx) => dropAnswers(tx, now))).toBe(1);
    expect(await once(kept, "again")).toMatchObject({ body: "kept" });
    expect(await once(old, "new")).toBeNull();
  });
});
