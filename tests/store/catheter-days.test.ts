import { expect, it } from "vitest";
import { ledgerCatheterDays } from "../../src/store/catheter-days.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { voidCatheter } from "../../src/usecases/record/void-entry.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";
import { dayOf, textOf } from "../reference/day-text.ts";

onEachDatabase("catheter-days of the ledger", (fresh) => {
  const shared = sharedStore(fresh);
  const days = async (wardIds: number[], first: string, last: string) => {
    const rows = await shared.store.read((read) =>
      ledgerCatheterDays(read, wardIds, { first: dayOf(first), last: dayOf(last) }),
    );
    return rows.map(({ wardId, patientId, day }) => `${textOf(day)} ${wardId} ${patientId}`).toSorted();
  };
  /** A stay from 1 to 9 March with a catheter from the 2nd to the 7th, on ward B from noon of the 5th on. */
  const patient = async (bay: AlderBay, name: string) => {
    const { stayId, patientId } = await bay.stay(name, "2024-03-01 10:00", "2024-03-09 10:00");
    const act = bay.at("2024-03-09 11:00");
    await movePatient(act, { stayId, movedAt: utc("2024-03-05 12:00"), wardId: bay.b });
    const { catheterId } = await insertCatheter(act, {
      ...{ stayId, kind: "indwelling-urethral", inPlaceOnArrival: false },
      ...{ insertedAt: utc("2024-03-02 10:00"), removedAt: utc("2024-03-07 10:00") },
    });
    return { stayId, patientId, catheterId };
  };

  it("are those of the wards and days that are asked for, both ends among them", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await patient(bay, "P1");
    const { a, b } = bay;
    expect(await days([a, b], "2024-03-01", "2024-03-31")).toEqual([
      ...["03", "04", "05"].map((text) => `2024-03-${text} ${a} ${patientId}`),
      ...["06", "07"].map((text) => `2024-03-${text} ${b} ${patientId}`),
    ]);
    expect(await days([a], "2024-03-04", "2024-03-05")).toHaveLength(2);
    expect(await days([b], "2024-03-07", "2024-03-07")).toEqual([`2024-03-07 ${b} ${patientId}`]);
    expect(await days([b], "2024-03-08", "2024-03-31")).toEqual([]);
    expect(await days([], "2024-03-01", "2024-03-31")).toEqual([]);
  });

  it("of a merged record are the survivor's, and of a voided catheter there are none", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, catheterId } = await patient(bay, "P1");
    const survivor = await bay.stay("P2", "2024-03-11 10:00", "2024-03-12 10:00");
    await mergePatients(bay.at("2024-03-12 11:00"), { fromId: patientId, intoId: survivor.patientId });
    const wards = [bay.a, bay.b];
    const found = await days(wards, "2024-03-01", "2024-03-31");
    expect(found.map((text) => Number(text.split(" ")[2]))).toEqual(
      Array.from({ length: 5 }, () => survivor.patientId),
    );
    await voidCatheter(bay.at("2024-03-12 12:00"), { catheterId, reason: "another patient's" });
    expect(await days(wards, "2024-03-01", "2024-03-31")).toEqual([]);
  });
});
