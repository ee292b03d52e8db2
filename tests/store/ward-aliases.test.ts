import { expect, it } from "vitest";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { addSource } from "../../src/store/import-sources.ts";
import { addAlias, aliasesOf, aliasOf, repointAliases, voidAlias } from "../../src/store/ward-aliases.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { versionsOf } from "../databases/read-back.ts";
import { faultsOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";

const reason = "Another unit after all";

onEachDatabase("an alias of a ward", (fresh) => {
  const shared = sharedStore(fresh);
  const sourceIn = (bay: AlderBay, name: string) =>
    shared.store.tx((tx) => addSource(tx, bay.by("2024-03-01 08:00"), { name, settings: defaultSourceSettings }));
  const all = (bay: AlderBay, sourceId?: number) =>
    shared.store.read((read) => aliasesOf(read, bay.facilityId, sourceId));

  it("is one of its source's, is removed with a reason, and can then be answered again", async () => {
    const bay = await alderBay(shared.store);
    const [sourceId, other] = [await sourceIn(bay, "Admissions"), await sourceIn(bay, "Laboratory")];
    const by = { ...bay.by("2024-03-02 08:00"), reason };
    const add = (id: number) => shared.store.tx((tx) => addAlias(tx, by, { sourceId: id, code: "a 1", wardId: bay.a }));
    await add(sourceId);
    await add(other);
    const [alias] = await all(bay, sourceId);
    if (!alias) throw new Error("the alias was not stored");
    expect(await all(bay)).toHaveLength(2);
    const find = (id: number) =>
      shared.store.read((read) => aliasOf(read, bay.facilityId, { sourceId: id, aliasId: alias.id }));
    expect(await find(sourceId)).toEqual(alias);
    expect((await faultsOf(() => find(other)))[0]?.code).toBe("not-found");
    await shared.store.tx((tx) => voidAlias(tx, by, alias));
    expect(await all(bay, sourceId)).toEqual([]);
    expect(await versionsOf(shared.store, "ward-alias", alias.id)).toMatchObject([{ body: alias, reason }]);
    await add(sourceId);
    expect(await all(bay, sourceId)).toHaveLength(1);
  });

  it("follows its ward into another one", async () => {
    const bay = await alderBay(shared.store);
    const sourceId = await sourceIn(bay, "Admissions");
    const by = { ...bay.by("2024-03-02 08:00"), reason };
    await shared.store.tx(async (tx) => {
      await addAlias(tx, by, { sourceId, code: "a 1", wardId: bay.a });
      await repointAliases(tx, by, { fromId: bay.a, intoId: bay.b });
    });
    expect(await all(bay)).toMatchObject([{ code: "a 1", wardId: bay.b, version: 2 }]);
  });
});
