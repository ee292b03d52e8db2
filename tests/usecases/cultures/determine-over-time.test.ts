import { expect, it } from "vitest";
import { determinationsOfCase } from "../../../src/store/determinations.ts";
import { determineByNow } from "../../../src/usecases/cultures/determine-by-now.ts";
import { recordSigns } from "../../../src/usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../../../src/usecases/cultures/record-specimen.ts";
import { rebuildDeterminations, verifyDeterminations } from "../../../src/usecases/jobs/check-determinations.ts";
import { insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { mergePatients, unmergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { changeWatch, watchWard } from "../../../src/usecases/settings/watch-ward.ts";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const day = (text: string) => utc(`${text} 00:00`) / 86_400_000;

onEachDatabase("what a culture is determined to be", (fresh) => {
  const shared = sharedStore(fresh);

  it("follows time, wards, editions and merges, each with its cause", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.admit("P1", "2024-03-01 08:00");
    const catheter = { kind: "indwelling-urethral", inPlaceOnArrival: false } as const;
    await insertCatheter(bay.at("2024-03-01 09:00"), { stayId, ...catheter, insertedAt: utc("2024-03-01 09:00") });
    const specimen = { patientId, kind: "urine", method: "culture", status: "final" } as const;
    const { specimenId: caseId } = await recordSpecimen(bay.at("2024-03-10 12:00"), {
      ...{ ...specimen, collectedAt: utc("2024-03-10 08:00") },
      organisms: [{ name: "Escherichia coli", count: ">100000" }],
    });
    const kept = () => shared.store.read((read) => determinationsOfCase(read, bay.facilityId, caseId));
    const causes = async () => (await kept()).map(({ cause, outcome }) => `${cause} ${outcome}`);
    expect(await causes()).toEqual(["record-specimen cannot-tell"]);

    // The window closes on the 13th; asked again on a later day there is nothing to do.
    await determineByNow(bay.at("2024-03-15 12:00"));
    const after = await kept();
    await determineByNow(bay.at("2024-03-16 12:00"));
    expect(await kept()).toEqual(after);
    expect(after.at(-1)).toMatchObject({ knownThrough: day("2024-03-15"), state: "out-of-scope" });

    const signs = [{ sign: "temperature", finding: "present", temperature: "38.6 °C" }] as const;
    await recordSigns(bay.at("2024-03-16 13:00"), { patientId, day: day("2024-03-11"), signs });
    expect((await kept()).at(-1)).toMatchObject({ outcome: "event", wardId: bay.a, isCauti: true });

    const said = { fromDay: day("2024-01-01"), name: "A", type: null, beds: null };
    const describe = (setting: "inpatient" | "outpatient", time: string) =>
      describeWard(bay.at(time), { wardId: bay.a, ...said, setting, reason: "Mistaken for another" });
    await describe("outpatient", "2024-03-16 14:00");
    expect((await kept()).at(-1)).toMatchObject({
      cause: "describe-ward",
      reason: "Mistaken for another",
      isCauti: false,
    });
    await describe("inpatient", "2024-03-16 15:00");
    expect((await kept()).at(-1)).toMatchObject({ isCauti: true, placeId: bay.a });

    const months = { fromMonth: "2024-03", toMonth: null } as never as { fromMonth: never; toMonth: null };
    await watchWard(bay.at("2024-03-16 16:00"), { wardId: bay.a, ...months, edition: "ecdc-2017" });
    expect((await kept()).at(-1)).toMatchObject({
      ...{ cause: "watch-ward", editionId: "ecdc-2017", state: "waiting" },
    });

    // A second record of the patient, whose days lie before these: nothing comes out other than before.
    const other = await bay.stay("P2", "2024-01-10 08:00", "2024-01-12 08:00");
    const before = await kept();
    const { mergeId } = await mergePatients(bay.at("2024-03-16 17:00"), { fromId: patientId, intoId: other.patientId });
    expect((await kept()).at(-1)?.survivorId).toBe(other.patientId);
    await unmergePatients(bay.at("2024-03-16 18:00"), { mergeId, reason: "Two people" });
    expect((await kept()).at(-1)).toMatchObject({ survivorId: patientId, reported: before.at(-1)?.reported });
    expect((await kept()).filter(({ state }) => state !== "replaced")).toHaveLength(1);
    const trail = await auditOf(shared.store, bay.facilityId);
    const again = trail.filter(({ action }) => action === "determine-again");
    expect(again.length).toBe(after.length - 1);
  });

  it("is no work out of scope, becomes work when its unit is put under surveillance for past months, and stops again", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.admit("P1", "2024-02-20 08:00");
    await movePatient(bay.at("2024-03-02 09:00"), {
      stayId,
      movedAt: utc("2024-03-02 08:30"),
      wardId: bay.b,
      bed: null,
    });
    const specimen = { patientId, kind: "urine", method: "culture", status: "pending", organisms: [] } as const;
    const { specimenId: caseId } = await recordSpecimen(bay.at("2024-03-02 12:00"), {
      ...{ ...specimen, collectedAt: utc("2024-03-02 10:00") },
    });
    const kept = async () => (await shared.store.read((r) => determinationsOfCase(r, bay.facilityId, caseId))).at(-1);
    const watch = (wardId: number, fromMonth: string, toMonth: string | null) =>
      watchWard(bay.at("2024-03-02 13:00"), { wardId, fromMonth, toMonth, edition: "us-2024" } as never);
    expect(await kept()).toMatchObject({ state: "out-of-scope", mayCount: "[]" });
    // Collected on ward B on the day of the transfer, so that an event of any possible date would belong to ward A.
    await watch(bay.b, "2024-01", null);
    expect(await kept()).toMatchObject({ state: "out-of-scope", number: 1 });
    await watch(bay.a, "2023-01", "2023-12");
    expect(await kept()).toMatchObject({ state: "out-of-scope", number: 1 });
    const { scopeId } = await watch(bay.a, "2024-02", "2024-02");
    expect(await kept()).toMatchObject({ state: "pending", cause: "watch-ward" });
    expect(JSON.parse((await kept())?.mayCount ?? "")).toEqual([{ wardId: bay.a, month: "2024-02" }]);
    const change = { wardId: bay.a, scopeId, reason: "Longer" };
    await changeWatch(bay.at("2024-03-02 14:00"), { ...change, toMonth: null });
    expect(JSON.parse((await kept())?.mayCount ?? "")).toHaveLength(2);
    await changeWatch(bay.at("2024-03-02 15:00"), { ...change, voided: true });
    expect(await kept()).toMatchObject({ state: "out-of-scope", cause: "change-watch" });
  });

  it("is found by the check where what is kept of its scope is not what its record says", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.admit("P1", "2024-03-01 08:00");
    const specimen = { patientId, kind: "urine", method: "culture", status: "pending", organisms: [] } as const;
    const act = bay.at("2024-03-02 12:00");
    await recordSpecimen(act, { ...specimen, collectedAt: utc("2024-03-02 08:00") });
    expect((await verifyDeterminations(act)).differences).toEqual([]);
    await shared.store.tx((tx) => tx.db.determination.updateMany({ data: { mayCount: null } }));
    expect((await verifyDeterminations(act)).differences).toHaveLength(1);
    await rebuildDeterminations(act);
    expect((await verifyDeterminations(act)).differences).toEqual([]);
  });
});
