import { expect, it } from "vitest";
import { patientPage } from "../../src/store/patient-pages.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

onEachDatabase("pages of patients", (fresh) => {
  const shared = sharedStore(fresh);

  it("hold every patient of the facility once, merged ones too, and nobody else", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const ids: number[] = [];
    for (let i = 1; i <= 5; i++) {
      ids.push((await bay.stay(`P${i}`, `2024-03-0${i} 10:00`, `2024-03-0${i} 12:00`)).patientId);
      await other.admit(`P${i}`, "2024-03-01 10:00");
    }
    await mergePatients(bay.at("2024-03-09 10:00"), { fromId: ids[1] ?? 0, intoId: ids[0] ?? 0 });
    const page = (after: number) => shared.store.read((read) => patientPage(read, bay.facilityId, after, 2));
    expect(await page(0)).toEqual(ids.slice(0, 2));
    expect(await page(ids[1] ?? 0)).toEqual(ids.slice(2, 4));
    expect(await page(ids[3] ?? 0)).toEqual(ids.slice(4));
    expect(await page(ids[4] ?? 0)).toEqual([]);
  });
});
