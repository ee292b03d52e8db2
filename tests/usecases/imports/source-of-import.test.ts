import { expect, it } from "vitest";
import { defaultSourceSettings, type SourceSettings } from "../../../shared/source-settings.ts";
import { addImport } from "../../../src/store/imports.ts";
import { receiveImport } from "../../../src/usecases/imports/receive-import.ts";
import {
  knownSource,
  rulesOfImport,
  settingsOfOwnSource,
  sourceForImport,
} from "../../../src/usecases/imports/source-of-import.ts";
import { addSource, changeSource } from "../../../src/usecases/settings/change-source.ts";
import { listSources } from "../../../src/usecases/settings/list-sources.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { faultsOf, refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles } from "./files.ts";

const now = "2024-03-20 10:00";
const settings: SourceSettings = { emptyOrganism: "no-growth", midnight: "no-hour" };
const files = { "wards.csv": ["ward,setting", "C,inpatient"] };
const names = async (bay: AlderBay) => (await listSources(bay.at(now))).sources.map(({ name }) => name);

onEachDatabase("the source of an import", (fresh) => {
  const shared = sharedStore(fresh);
  const rules = (bay: AlderBay, importId: number) =>
    shared.store.read((read) => rulesOfImport(read, bay.facilityId, importId));

  it("is the facility's own when none is named, made once", async () => {
    const bay = await alderBay(shared.store);
    expect(await settingsOfOwnSource(shared.store, bay.at(now).actor)).toEqual(defaultSourceSettings);
    await importFiles(bay.at(now), files);
    await importFiles(bay.at(now), files, { dryRun: true });
    await receiveImport(bay.at(now), { files: [{ name: "wards.csv", text: "ward" }] });
    expect(await names(bay)).toEqual(["Files"]);
    const [own] = (await listSources(bay.at(now))).sources;
    const change = { sourceId: own?.sourceId ?? 0, name: "Files", settings, reason: "Agreed", seenVersion: 1 };
    await changeSource(bay.at(now), change);
    expect(await settingsOfOwnSource(shared.store, bay.at(now).actor)).toEqual(settings);
  });

  it("is made once by two imports that begin at the same moment", async () => {
    const bay = await alderBay(shared.store);
    const twice = () => shared.store.tx((tx) => sourceForImport(tx, bay.at(now), undefined));
    const [one, other] = await Promise.all([twice(), twice()]);
    expect(one).toBe(other);
  });

  it("says how its files are read, and is one of the facility", async () => {
    const bay = await alderBay(shared.store);
    const elsewhere = await alderBay(shared.store);
    const { sourceId } = await addSource(bay.at(now), { name: "Laboratory", settings });
    const result = await importFiles(bay.at(now), files, { sourceId });
    expect(await rules(bay, result.importId)).toEqual({ zone: "UTC", settings });
    const strange = () => receiveImport(elsewhere.at(now), { files: [{ name: "wards.csv", text: "ward" }], sourceId });
    expect(await refusalOf(shared.store, strange)).toEqual({ code: "source-unknown", pointer: "/sourceId" });
  });

  it("is not known of an import from before sources were recorded, which was read as usual", async () => {
    const bay = await alderBay(shared.store);
    const old = { setAside: false, assumeInpatient: false, sourceId: null };
    const importId = await shared.store.tx((tx) => addImport(tx, bay.by(now), old));
    expect(await rules(bay, importId)).toEqual({ zone: "UTC", settings: defaultSourceSettings });
  });

  it("is found by its name, and a name that is not known is refused with those that are", async () => {
    const bay = await alderBay(shared.store);
    const find = (name: string) => knownSource(bay.at(now), name);
    const [none] = await faultsOf(() => find("Lab"));
    expect(none).toMatchObject({ code: "source-unknown", detail: expect.stringContaining("None is recorded yet.") });
    await addSource(bay.at(now), { name: "Laboratory", settings });
    expect(await find("Laboratory")).toMatchObject({ name: "Laboratory", settings });
    const [fault] = await faultsOf(() => find("Lab"));
    expect(fault?.detail).toBe("No import source is named Lab. Known are: Laboratory.");
  });
});
