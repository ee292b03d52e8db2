import { expect, it } from "vitest";
import { wards } from "../../../src/store/wards.ts";
import { voidWard } from "../../../src/usecases/wards/void-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { faultsOf, refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles } from "../imports/files.ts";

const now = "2024-03-20 10:00";
const reason = "Misspelled";

onEachDatabase("a ward that was entered in error", (fresh) => {
  const shared = sharedStore(fresh);
  const codes = async (bay: AlderBay) =>
    (await shared.store.read((read) => wards(read, bay.facilityId))).map(({ code }) => code);

  it("is no ward any more, and its code is free again", async () => {
    const bay = await alderBay(shared.store);
    const wardId = await bay.addWard("a 1", "inpatient");
    await voidWard(bay.at(now), { wardId, reason });
    expect(await codes(bay)).toEqual(["A", "B"]);
    expect(await auditOf(shared.store, bay.facilityId, bay.at(now).now)).toMatchObject([
      { action: "void-ward", details: { wardId, reason } },
    ]);
    const again = await bay.addWard("a 1", "outpatient");
    expect(again).not.toBe(wardId);
    expect(await codes(bay)).toEqual(["A", "B", "a 1"]);
    expect((await refusalOf(shared.store, () => voidWard(bay.at(now), { wardId, reason }))).code).toBe("not-found");
  });

  it("has no entry: a stay on it, or a line held for repair that names it, is told", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-03-02 10:00", "2024-03-06 10:00");
    const refused = async (wardId: number) => (await faultsOf(() => voidWard(bay.at(now), { wardId, reason })))[0];
    expect(await refused(bay.a)).toMatchObject({
      code: "ward-has-entries",
      detail: "The record has entries of this unit. unit stays: 1, patient-days: 4.",
    });
    const held = ["stay,patient,ward,from,to", 'S9,P9," B ",2024-03-09T10:00,2024-03-08T10:00', "S8,P8,BB,x,"];
    await importFiles(bay.at(now), { "moves.csv": held }, { setAside: true });
    expect((await refused(bay.b))?.detail).toBe("The record has entries of this unit. lines of files: 1.");
  });
});
