import { expect, it } from "vitest";
import { correctWardStay } from "../../../src/usecases/record/correct-entry.ts";
import { cancelDischarge } from "../../../src/usecases/record/discharge-patient.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { closeWard } from "../../../src/usecases/wards/close-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

const later = "2024-03-10 10:00";

onEachDatabase("a ward that closed on March 5", (fresh) => {
  const shared = sharedStore(fresh);
  const closed = async (): Promise<AlderBay> => {
    const bay = await alderBay(shared.store);
    await closeWard(bay.at("2024-03-05 10:00"), { wardId: bay.b, closedDay: dayOf("2024-03-05") });
    return bay;
  };
  const refused = (pointer: string) => ({ code: "ward-closed", pointer });

  it("takes admissions up to the end of its last day, and none afterwards", async () => {
    const bay = await closed();
    await bay.stay("P1", "2024-03-05 23:59", "2024-03-05 23:59", { wardId: bay.b });
    const after = () => bay.admit("P2", "2024-03-06 00:00", { wardId: bay.b });
    expect(await refusalOf(shared.store, after)).toEqual(refused("/wardId"));
    await closeWard(bay.at(later), { wardId: bay.b, closedDay: null });
    await after();
  });

  it("takes moves that are written down late, and none after its last day", async () => {
    const bay = await closed();
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-08 10:00");
    const move = (time: string) => movePatient(bay.at(later), { stayId, movedAt: utc(time), wardId: bay.b });
    expect(await refusalOf(shared.store, () => move("2024-03-06 00:00"))).toEqual(refused("/toWardId"));
    await move("2024-03-05 23:59");
  });

  it("keeps who was discharged from it, unless the discharge is taken back while it is open", async () => {
    const bay = await alderBay(shared.store);
    const there = await bay.stay("P1", "2024-03-01 10:00", "2024-03-04 10:00", { wardId: bay.b });
    const elsewhere = await bay.stay("P2", "2024-03-01 10:00", "2024-03-04 10:00");
    await closeWard(bay.at("2024-03-05 10:00"), { wardId: bay.b, closedDay: dayOf("2024-03-05") });
    const takeBack = ({ stayId }: { stayId: number }, time: string) =>
      cancelDischarge(bay.at(time), { stayId, reason: "another patient" });
    expect(await refusalOf(shared.store, () => takeBack(there, later))).toEqual(refused(""));
    await takeBack(elsewhere, later);
    await takeBack(there, "2024-03-05 23:59");
  });

  it("is where no ward stay is corrected to after its last day, by its ward or by its time", async () => {
    const bay = await closed();
    const { wardStayId } = await bay.stay("P1", "2024-03-07 10:00", "2024-03-08 10:00");
    const there = await bay.stay("P2", "2024-03-05 10:00", "2024-03-05 12:00", { wardId: bay.b });
    const correct = (id: number, changes: object) =>
      correctWardStay(bay.at(later), { wardStayId: id, changes, reason: "misread" });
    const ward = () => correct(wardStayId, { wardId: bay.b });
    expect(await refusalOf(shared.store, ward)).toEqual(refused("/toWardId"));
    await correct(there.wardStayId, { bed: "4" });
    await correct(there.wardStayId, { startAt: utc("2024-03-05 10:30") });
    const { stayId } = await bay.stay("P3", "2024-03-05 10:00", "2024-03-07 12:00");
    const on = await movePatient(bay.at(later), { stayId, movedAt: utc("2024-03-05 12:00"), wardId: bay.b });
    const time = () => correct(on.wardStayId, { startAt: utc("2024-03-06 12:00") });
    expect(await refusalOf(shared.store, time)).toEqual(refused("/startAt"));
  });
});
