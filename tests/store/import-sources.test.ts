import { expect, it } from "vitest";
import { defaultSourceSettings, type SourceSettings } from "../../shared/source-settings.ts";
import {
  addSource,
  changeSource,
  ensureSource,
  sourceNamed,
  sourceOf,
  sourcesOf,
} from "../../src/store/import-sources.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { versionsOf } from "../databases/read-back.ts";
import { faultsOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const settings: SourceSettings = { emptyOrganism: "no-growth", midnight: "no-hour" };

onEachDatabase("an import source", (fresh) => {
  const shared = sharedStore(fresh);

  it("is one of its facility's, by name, with who recorded it", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const by = bay.by("2024-03-01 08:00");
    const { store } = shared;
    const later = await store.tx((tx) => addSource(tx, by, { name: "Laboratory", settings }));
    const first = await store.tx((tx) => addSource(tx, by, { name: "Admissions", settings: defaultSourceSettings }));
    const recorded = { version: 1, recordedAt: utc("2024-03-01 08:00"), recordedBy: bay.personId };
    expect(await store.read((read) => sourcesOf(read, bay.facilityId))).toEqual([
      { id: first, name: "Admissions", settings: defaultSourceSettings, ...recorded },
      { id: later, name: "Laboratory", settings, ...recorded },
    ]);
    expect(await store.read((read) => sourceNamed(read, bay.facilityId, "Laboratory"))).toMatchObject({ id: later });
    expect(await store.read((read) => sourceNamed(read, other.facilityId, "Laboratory"))).toBeNull();
    const [fault] = await faultsOf(() => store.read((read) => sourceOf(read, other.facilityId, later)));
    expect(fault?.code).toBe("not-found");
  });

  it("is changed, and keeps what it was with the reason", async () => {
    const { store } = shared;
    const bay = await alderBay(store);
    const id = await store.tx((tx) => addSource(tx, bay.by("2024-03-01 08:00"), { name: "Laboratory", settings }));
    const old = await store.read((read) => sourceOf(read, bay.facilityId, id));
    const by = { ...bay.by("2024-03-02 08:00"), reason: "The laboratory writes every organism" };
    const now = { name: "Main laboratory", settings: defaultSourceSettings };
    await store.tx((tx) => changeSource(tx, by, old, now));
    expect(await store.read((read) => sourceOf(read, bay.facilityId, id))).toMatchObject({ ...now, version: 2 });
    expect(await versionsOf(store, "import-source", id)).toMatchObject([{ version: 1, body: old, reason: by.reason }]);
  });

  it("is made once, also by two transactions at one moment", async () => {
    const { store } = shared;
    const bay = await alderBay(store);
    const ensure = () =>
      store.tx((tx) =>
        ensureSource(tx, bay.by("2024-03-01 08:00"), { name: "Files", settings: defaultSourceSettings }),
      );
    const [one, other] = await Promise.all([ensure(), ensure()]);
    expect([one, await ensure()]).toEqual([other, other]);
    expect(await store.read((read) => sourcesOf(read, bay.facilityId))).toMatchObject([{ id: one, name: "Files" }]);
  });

  it("that was stored without a setting has the usual one", async () => {
    const { store } = shared;
    const bay = await alderBay(store);
    const only = { midnight: "no-hour" } as SourceSettings;
    const id = await store.tx((tx) => addSource(tx, bay.by("2024-03-01 08:00"), { name: "Old", settings: only }));
    const read = await store.read((reading) => sourceOf(reading, bay.facilityId, id));
    expect(read.settings).toEqual({ emptyOrganism: "reject", midnight: "no-hour" });
  });
});
