import { expect, it } from "vitest";
import { keepVersions } from "../../src/store/entry-versions.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { versionsOf } from "../databases/read-back.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("an old version of an entry", (fresh) => {
  const shared = sharedStore(fresh);

  it("is put away with what it said, who replaced it, when and why", async () => {
    const bay = await alderBay(shared.store);
    const by = { ...bay.by("2024-04-01 08:00:00.007"), reason: "O'Brien said so" };
    const body = { wardId: 3, bed: null, marks: ["é"], note: 'it\'s "7"' };
    await shared.store.tx((tx) => keepVersions(tx, by, [{ kind: "thing", id: 5, version: 1, body }]));
    expect(await versionsOf(shared.store, "thing", 5)).toEqual([
      {
        version: 1,
        body,
        replacedAt: utc("2024-04-01 08:00:00.007"),
        replacedBy: bay.personId,
        reason: "O'Brien said so",
      },
    ]);
  });

  it("has no reason when nobody gave one, and many can be put away at once, or none", async () => {
    const bay = await alderBay(shared.store);
    const by = bay.by("2024-04-01 08:00");
    const old = [1, 2, 3].map((version) => ({ kind: "thing", id: 6, version, body: { version } }));
    await shared.store.tx((tx) => keepVersions(tx, by, old));
    await shared.store.tx((tx) => keepVersions(tx, by, []));
    const kept = await versionsOf(shared.store, "thing", 6);
    expect(kept.map(({ version, body, reason }) => [version, body, reason])).toEqual([
      [1, { version: 1 }, null],
      [2, { version: 2 }, null],
      [3, { version: 3 }, null],
    ]);
  });

  it("cannot be put away twice, so that two changes of one version cannot both be stored", async () => {
    const bay = await alderBay(shared.store);
    const put = () =>
      shared.store.tx((tx) =>
        keepVersions(tx, bay.by("2024-04-01 08:00"), [{ kind: "thing", id: 7, version: 1, body: {} }]),
      );
    await put();
    await expect(put()).rejects.toThrow(/[Uu]nique|UNIQUE|duplicate key/);
  });
});
