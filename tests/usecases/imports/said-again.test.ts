import { expect, it } from "vitest";
import { correctStay } from "../../../src/usecases/record/correct-entry.ts";
import { cancelDischarge, dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { removeCatheter } from "../../../src/usecases/record/remove-catheter.ts";
import { listWards } from "../../../src/usecases/wards/list-wards.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { everything } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { type Files, importFiles, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const reason = "seen in the paper chart";
const stays = (...lines: string[]) => ({ "stays.csv": ["stay,patient,admitted,discharged,disposition", ...lines] });
const moves = (...lines: string[]) => ({ "moves.csv": ["stay,patient,ward,bed,from,to", ...lines] });
const catheters = (...lines: string[]) => ({ "catheters.csv": ["stay,catheter,inserted,removed", ...lines] });
const counts = (...lines: string[]) => ({ "daily-counts.csv": ["ward,day,patients,catheters", ...lines] });

onEachDatabase("files that come again", (fresh) => {
  const shared = sharedStore(fresh);

  const imported = async (bay: AlderBay, ...files: Files[]) => {
    const texts: string[] = [];
    for (const one of files) texts.push(resultText(await importFiles(bay.at(time), one)));
    return texts;
  };

  const record = async () => {
    const { stay, ward_stay, catheter, patient_day, entry_version } = await everything(shared.store);
    return { stay, ward_stay, catheter, patient_day, entry_version };
  };

  /** The stay of the hospital with what is in it. */
  const theStay = (bay: AlderBay) =>
    shared.store.read((read) =>
      read.db.stay.findFirstOrThrow({
        where: { facilityId: bay.facilityId },
        include: { catheters: true, wardStays: { orderBy: { startAt: "asc" } } },
      }),
    );

  it("with one thing, then another, then the first again end with the first", async () => {
    const bay = await alderBay(shared.store);
    const says = (bed: number, day: number) => ({
      ...stays(`S1,P1,2024-03-01T08:00,2024-03-0${day}T08:00,${bed === 1 ? "home" : "hospice"}`),
      ...moves(`S1,P1,A,${bed},2024-03-01T08:00,2024-03-0${day}T08:00`),
      ...catheters(`S1,C1,2024-03-0${bed}T09:00,2024-03-0${day}T07:00`),
    });
    const [first, other] = [says(1, 5), says(2, 6)];
    const accepted = "applied: 3 accepted, 0 marked, 0 unchanged, 0 refused";
    const unchanged = "applied: 0 accepted, 0 marked, 3 unchanged, 0 refused";
    expect(await imported(bay, first, first, other, other, first, first)).toEqual([
      ...[accepted, unchanged, accepted, unchanged, accepted, unchanged],
    ]);
    const stay = await theStay(bay);
    expect(stay).toMatchObject({ dischargedAt: new Date(utc("2024-03-05 08:00")), disposition: "home" });
    expect(stay.wardStays).toMatchObject([{ bed: "1", endAt: new Date(utc("2024-03-05 08:00")) }]);
    expect(stay.catheters).toMatchObject([{ insertedAt: new Date(utc("2024-03-01 09:00")) }]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 4, differences: 0 });
  });

  it("leave a correction by hand alone that was made after the latest of them", async () => {
    const bay = await alderBay(shared.store);
    const says = (day: number) => ({
      ...stays(`S1,P1,2024-03-01T08:00,2024-03-0${day}T08:00,home`),
      ...moves(`S1,P1,A,,2024-03-01T08:00,2024-03-04T08:00`),
    });
    await imported(bay, says(5), says(6), says(5));
    const { id: stayId } = await theStay(bay);
    await correctStay(bay.at(time), { stayId, changes: { dischargedAt: utc("2024-03-07 08:00") }, reason });
    const before = await record();
    expect(await imported(bay, says(5))).toEqual(["applied: 0 accepted, 0 marked, 2 unchanged, 0 refused"]);
    expect(await record()).toEqual(before);
    expect(await imported(bay, says(6))).toEqual(["applied: 1 accepted, 0 marked, 1 unchanged, 0 refused"]);
  });

  it("with a count, then another, then the first again end with the first", async () => {
    const bay = await alderBay(shared.store);
    const says = (patients: number) => counts(`A,2024-03-01,${patients},3`);
    const counted = async () => {
      const rows = await shared.store.read((read) =>
        read.db.dailyCount.findMany({ where: { ward: { facilityId: bay.facilityId } } }),
      );
      return rows.map((row) => row.patients);
    };
    for (const patients of [12, 13, 12]) {
      await imported(bay, says(patients));
      expect(await counted()).toEqual([patients]);
    }
    expect(await imported(bay, says(12))).toEqual(["applied: 0 accepted, 0 marked, 1 unchanged, 0 refused"]);
  });

  it("with a ward's name, then another, then the first again end with the first", async () => {
    const bay = await alderBay(shared.store);
    const says = (name: string) => ({ "wards.csv": ["ward,name,setting", `C,${name},inpatient`] });
    await imported(bay, says("North"), says("South"), says("North"));
    const { wards } = await listWards(bay.at(time), {});
    expect(wards.find((ward) => ward.code === "C")?.name).toBe("North");
  });

  it("with empty cells keep the ends that somebody recorded by hand, and say so once", async () => {
    const bay = await alderBay(shared.store);
    const open: Files = {
      ...stays("S1,P1,2024-03-01T08:00,,"),
      ...moves("S1,P1,A,1,2024-03-01T08:00,"),
      ...catheters("S1,C1,2024-03-01T09:00,"),
    };
    await imported(bay, open);
    const { id: stayId, catheters: inserted } = await theStay(bay);
    const catheterId = inserted[0]?.id ?? 0;
    await removeCatheter(bay.at(time), { catheterId, at: utc("2024-03-03 09:00") });
    await dischargePatient(bay.at(time), { stayId, dischargedAt: utc("2024-03-04 08:00"), disposition: "home" });
    const before = await record();
    const again: Files = {
      ...stays("S1,P1,2024-03-01T08:00,,home"),
      ...moves("S1,P1,A,,2024-03-01T08:00,"),
      ...catheters("S1,C1,,"),
    };
    const kept = await importFiles(bay.at(time), again);
    expect(resultText(kept)).toBe("applied: 0 accepted, 3 marked, 0 unchanged, 0 refused");
    const marks = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: kept.importId } }),
    );
    expect(marks.map((row) => row.faults)).toEqual(['["end-kept"]', '["end-kept"]', '["end-kept"]']);
    expect(await record()).toEqual(before);
    expect(await imported(bay, again)).toEqual(["applied: 0 accepted, 0 marked, 3 unchanged, 0 refused"]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 3, differences: 0 });
  });

  it("with moves alone leave the end of the stay to the person who gave it, or took it back", async () => {
    const bay = await alderBay(shared.store);
    const move = (bed: number) => moves(`S1,P1,A,${bed},2024-03-01T08:00,2024-03-03T08:00`);
    await imported(bay, move(1));
    const { id: stayId } = await theStay(bay);
    const dischargedAt = utc("2024-03-04 08:00");
    await correctStay(bay.at(time), { stayId, changes: { dischargedAt }, reason });
    await imported(bay, move(2));
    expect(await theStay(bay)).toMatchObject({ dischargedAt: new Date(dischargedAt), wardStays: [{ bed: "2" }] });
    expect((await ledgerOfAll(bay.at(time))).differences).toBe(0);
    const other = await alderBay(shared.store);
    await imported(other, move(1));
    await cancelDischarge(other.at(time), { stayId: (await theStay(other)).id, reason });
    await imported(other, move(2));
    expect(await theStay(other)).toMatchObject({ dischargedAt: null, wardStays: [{ bed: "2" }] });
    expect((await ledgerOfAll(other.at(time))).differences).toBe(0);
  });

  it("with an admission where only moves were before take their end for no discharge, so that the next one fits", async () => {
    const bay = await alderBay(shared.store);
    const first = "S1,P1,A,1,2024-03-01T08:00,2024-03-03T08:00";
    await imported(bay, moves(first), { ...stays("S1,P1,2024-03-01T08:00,,"), ...moves(first) });
    expect(await theStay(bay)).toMatchObject({ dischargedAt: null, spanFromMoves: false });
    expect(await imported(bay, moves("S1,P1,B,2,2024-03-03T08:00,"))).toEqual([
      "applied: 1 accepted, 0 marked, 0 unchanged, 0 refused",
    ]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 2, differences: 0 });
  });

  it("with a number for a catheter that had none speak of that catheter, and of another one afterwards", async () => {
    const bay = await alderBay(shared.store);
    const place = moves("S1,P1,A,1,2024-03-01T08:00,2024-03-05T08:00");
    await imported(bay, { ...place, ...catheters("S1,,2024-03-01T09:00,") });
    expect(await imported(bay, catheters("S1,C1,2024-03-01T09:00,2024-03-03T09:00"))).toEqual([
      "applied: 1 accepted, 0 marked, 0 unchanged, 0 refused",
    ]);
    await imported(bay, catheters("S1,C2,2024-03-04T09:00,"));
    const numbers = (await theStay(bay)).catheters.map((c) => [c.number, c.removedAt !== null]);
    expect(numbers.sort()).toEqual([
      ["C1", true],
      ["C2", false],
    ]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 4, differences: 0 });
  });
});
