import { expect, it } from "vitest";
import { listSources as endpoint } from "../../../shared/api/import-sources.ts";
import { defaultSourceSettings } from "../../../shared/source-settings.ts";
import { addSource } from "../../../src/usecases/settings/change-source.ts";
import { listSources } from "../../../src/usecases/settings/list-sources.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";

onEachDatabase("the list of import sources", (fresh) => {
  const shared = sharedStore(fresh);

  it("has those of the facility by name, with how their files are read", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const act = bay.at("2024-03-20 10:00");
    for (const name of ["Laboratory", "Admissions"]) await addSource(act, { name, settings: defaultSourceSettings });
    const listed = endpoint.output.encode(await listSources(act));
    expect(listed.sources.map(({ name, settings, version }) => [name, settings.midnight, version])).toEqual([
      ["Admissions", "time", 1],
      ["Laboratory", "time", 1],
    ]);
    expect(await listSources(other.at("2024-03-20 10:00"))).toEqual({ sources: [] });
  });
});
