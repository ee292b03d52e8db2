import { expect, it } from "vitest";
import { defaultSourceSettings, type SourceSettings } from "../../../shared/source-settings.ts";
import { addSource, changeSource } from "../../../src/usecases/settings/change-source.ts";
import { listSources } from "../../../src/usecases/settings/list-sources.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";

const now = "2024-03-20 10:00";
const settings: SourceSettings = { ...defaultSourceSettings, emptyOrganism: "no-growth" };
const reason = "The laboratory leaves the organism empty";

onEachDatabase("the sources of imported files", (fresh) => {
  const shared = sharedStore(fresh);

  it("are added once by name, with an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const add = () => addSource(bay.at(now), { name: "Laboratory", settings });
    const { sourceId } = await add();
    expect(await listSources(bay.at(now))).toMatchObject({ sources: [{ sourceId, name: "Laboratory", settings }] });
    expect(await refusalOf(shared.store, add)).toEqual({
      ...{ code: "source-name-taken", pointer: "/name", other: `import source ${sourceId}` },
    });
    expect(await auditOf(shared.store, bay.facilityId, bay.at(now).now)).toMatchObject([
      { action: "add-source", details: { sourceId, settings } },
    ]);
  });

  it("are changed by whoever saw the latest version, to a name that is free", async () => {
    const bay = await alderBay(shared.store);
    const { sourceId } = await addSource(bay.at(now), { name: "Laboratory", settings: defaultSourceSettings });
    await addSource(bay.at(now), { name: "Admissions", settings });
    const change = (seenVersion: number, name = "Laboratory", id = sourceId) =>
      changeSource(bay.at("2024-03-21 10:00"), { sourceId: id, name, settings, reason, seenVersion });
    expect((await refusalOf(shared.store, () => change(1, "Admissions"))).code).toBe("source-name-taken");
    expect((await refusalOf(shared.store, () => change(1, "Laboratory", 999_999))).code).toBe("not-found");
    expect(await change(1)).toEqual({ sourceId, version: 2 });
    expect((await refusalOf(shared.store, () => change(1))).code).toBe("stale-version");
    const { sources } = await listSources(bay.at(now));
    expect(sources.map(({ name, settings: { emptyOrganism } }) => [name, emptyOrganism])).toEqual([
      ["Admissions", "no-growth"],
      ["Laboratory", "no-growth"],
    ]);
  });
});
