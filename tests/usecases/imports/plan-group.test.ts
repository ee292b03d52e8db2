import { expect, it } from "vitest";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { ledgerOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const header = "stay,patient,ward,from,to";

onEachDatabase("lines about some patients", (fresh) => {
  const shared = sharedStore(fresh);

  /** The faults of the refused lines of an import. */
  const faultsOf = (importId: number) =>
    shared.store.read(async (read) => {
      const rows = await read.db.importLine.findMany({
        where: { importId, state: "refused" },
        orderBy: [{ file: "asc" }, { line: "asc" }],
      });
      return rows.map((row) => ({ at: `${row.file} ${row.line}`, ...JSON.parse(row.faults ?? "[]")[0] }));
    });

  it("are refused when their stay is recorded for somebody else, who is named by number", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.stay("P1", "2024-03-01 08:00", "2024-03-02 08:00", { number: "S1" });
    const stolen = { "moves.csv": [header, "S1,P2,B,2024-03-03T08:00,2024-03-04T08:00"] };
    const result = await importFiles(bay.at(time), stolen, { setAside: true });
    expect(await faultsOf(result.importId)).toMatchObject([
      { at: "moves.csv 2", code: "stay-of-another-patient", column: "stay", other: `patient ${patientId}` },
    ]);
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A"]);
  });

  it("are refused when two of their lines claim one stay for two patients", async () => {
    const bay = await alderBay(shared.store);
    const result = await importFiles(
      bay.at(time),
      {
        "stays.csv": ["stay,patient,admitted", "S1,P1,2024-03-01T08:00"],
        "moves.csv": [header, "S1,P2,A,2024-03-01T08:00,", "S1,P1,A,2024-03-01T08:00,"],
      },
      { setAside: true },
    );
    expect(resultText(result)).toBe("applied: 2 accepted, 0 marked, 0 unchanged, 1 refused");
    expect(await faultsOf(result.importId)).toMatchObject([
      { at: "moves.csv 2", code: "stay-of-another-patient", column: "patient", other: "stays.csv line 2" },
    ]);
  });

  it("find the patient of a catheter by the number of a stay that was recorded before", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.stay("P1", "2024-03-01 08:00", "2024-03-04 08:00", { number: "S1" });
    const result = await importFiles(
      bay.at(time),
      { "catheters.csv": ["stay,inserted,removed", "S1,2024-03-01T09:00,2024-03-03T09:00", "S9,2024-03-01T09:00,"] },
      { setAside: true },
    );
    expect(await faultsOf(result.importId)).toMatchObject([{ at: "catheters.csv 3", code: "stay-unknown" }]);
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      ...["2024-03-02 A with catheter", "2024-03-03 A with catheter", "2024-03-04 A"],
    ]);
  });

  it("about both records of merged patients go to the survivor and may not overlap", async () => {
    const bay = await alderBay(shared.store);
    const survivor = await bay.stay("P1", "2024-03-01 08:00", "2024-03-02 08:00");
    const merged = await bay.stay("P2", "2024-03-02 08:00", "2024-03-03 08:00");
    await mergePatients(bay.at(time), { fromId: merged.patientId, intoId: survivor.patientId });
    const result = await importFiles(
      bay.at(time),
      {
        "moves.csv": [
          header,
          "S11,P1,A,2024-03-04T08:00,2024-03-05T08:00",
          "S12,P2,B,2024-03-05T08:00,2024-03-06T08:00",
          "S13,P2,B,2024-03-04T09:00,2024-03-04T10:00",
        ],
      },
      { setAside: true },
    );
    expect(await faultsOf(result.importId)).toMatchObject([{ at: "moves.csv 4", code: "stay-overlaps" }]);
    expect(await ledgerOf(shared.store, survivor.patientId)).toEqual([
      ...["2024-03-02 A", "2024-03-03 A", "2024-03-05 A", "2024-03-06 B"],
    ]);
    expect(await ledgerOf(shared.store, merged.patientId)).toEqual([]);
    expect((await ledgerOfAll(bay.at(time))).differences).toBe(0);
  });

  it("are the facility's own: another one may use the same numbers", async () => {
    const [one, other] = [await alderBay(shared.store), await alderBay(shared.store)];
    const files = { "moves.csv": [header, "S1,P1,A,2024-03-01T08:00,2024-03-03T08:00"] };
    for (const bay of [one, other])
      expect(resultText(await importFiles(bay.at(time), files))).toBe(
        "applied: 1 accepted, 0 marked, 0 unchanged, 0 refused",
      );
  });
});
