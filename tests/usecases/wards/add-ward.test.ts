import { expect, it } from "vitest";
import { wards } from "../../../src/store/wards.ts";
import { type AddWard, addWard } from "../../../src/usecases/wards/add-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { firstOf } from "../../databases/first-of.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";

const said = { name: "Surgery", type: "surgical", setting: "inpatient", beds: 20 } as const;
const now = "2024-03-10 10:00";

onEachDatabase("adding a ward", (fresh) => {
  const shared = sharedStore(fresh);
  const add = (bay: AlderBay, code: string, openedDay: AddWard["openedDay"] = 18_000) =>
    addWard(bay.at(now), { code, openedDay, ...said });
  const read = async (bay: AlderBay, id: number) =>
    firstOf(await shared.store.read((r) => wards(r, bay.facilityId, [id])));

  it("makes it from the day it opened, or from the beginning, with an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const { wardId } = await add(bay, "S");
    const ward = { openedDay: 18_000, closedDay: null, namedOnly: false, version: 1 };
    expect(await read(bay, wardId)).toMatchObject({
      ...{ code: "S", ...ward },
      settings: [{ ...said, fromDay: 18_000, byHand: true, version: 1 }],
    });
    expect(await auditOf(shared.store, bay.facilityId, bay.at(now).now)).toEqual([
      {
        at: bay.at(now).now,
        personId: bay.personId,
        action: "add-ward",
        patientIds: [],
        details: { wardId, setting: "inpatient", openedDay: 18_000 },
      },
    ]);
    const always = await add(bay, "T", null);
    expect((await read(bay, always.wardId)).settings).toMatchObject([{ fromDay: 0 }]);
  });

  it("is refused without a code, and with the code of another ward of the facility", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    await add(other, "S");
    await add(bay, "S");
    expect(await refusalOf(shared.store, () => add(bay, " "))).toEqual({ code: "field-missing", pointer: "/code" });
    expect(await refusalOf(shared.store, () => add(bay, "A"))).toEqual({
      ...{ code: "ward-code-taken", pointer: "/code", other: `ward ${bay.a}` },
    });
  });

  it("by two people at once under one code makes one ward", async () => {
    const bay = await alderBay(shared.store);
    const both = await Promise.allSettled([add(bay, "N"), add(bay, "N")]);
    expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    const refused = both.find((one) => one.status === "rejected");
    expect(refused).toMatchObject({ reason: { code: "ward-code-taken" } });
  });
});
