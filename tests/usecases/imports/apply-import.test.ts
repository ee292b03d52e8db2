import { setImmediate as nextTurn } from "node:timers/promises";
import { expect, it } from "vitest";
import type { ImportProgress } from "../../../src/usecases/imports/intake-item.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { admitPatient } from "../../../src/usecases/record/admit-patient.ts";
import { correctWardStay } from "../../../src/usecases/record/correct-entry.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { type Files, importFiles, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const patients = 600;

/** Many patients, each two days on ward A with a catheter, and one day on ward C, which nobody described. */
function manyPatients(): Files {
  const each = (line: (n: number) => string[]) => Array.from({ length: patients }, (_, n) => n).flatMap(line);
  return {
    "stays.csv": [
      "stay,patient,birth_date,sex,admitted,discharged",
      ...each((n) => [`S${n},P${n},1950-01-01,F,2024-03-01T08:00,2024-03-04T08:00`]),
    ],
    "moves.csv": [
      "stay,patient,ward,from,to",
      ...each((n) => [
        `S${n},P${n},A,2024-03-01T08:00,2024-03-03T08:00`,
        `S${n},P${n},C,2024-03-03T08:00,2024-03-04T08:00`,
      ]),
    ],
    "catheters.csv": ["stay,inserted,removed", ...each((n) => [`S${n},2024-03-01T09:00,2024-03-02T09:00`])],
  };
}

onEachDatabase("applying an import", (fresh) => {
  const shared = sharedStore(fresh);

  it("of more patients than one transaction takes stores them all, and counts what wards earn", async () => {
    const bay = await alderBay(shared.store);
    const result = await importFiles(bay.at(time), manyPatients());
    expect(resultText(result)).toBe(`applied: ${4 * patients} accepted, 0 marked, 0 unchanged, 0 refused`);
    // Two midnights on A for each; ward C has no setting, so it earns nothing.
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 2 * patients, differences: 0 });
    const { wards } = await loadMonth(bay.at(time), { days: null });
    expect(wards.map((ward) => [ward.code, ward.inpatient, ward.patientDays, ward.catheterDays])).toEqual([
      ["A", "yes", 2 * patients, patients],
      ["B", "yes", 0, 0],
      ["C", "unknown", 0, 0],
    ]);
    const known = await shared.store.read((read) =>
      read.db.patient.count({ where: { facilityId: bay.facilityId, sex: "female", birthDay: -7305 } }),
    );
    expect(known).toBe(patients);
    // A setting given later makes the third day of everybody count.
    await importFiles(bay.at(time), { "wards.csv": ["ward,setting", "C,inpatient"] });
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 3 * patients, differences: 0 });
    expect(resultText(await importFiles(bay.at(time), manyPatients()))).toContain(
      `${4 * patients} unchanged, 0 refused`,
    );
  });

  it("while the same patients are recorded and corrected by hand keeps the ledger right", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at(time);
    const admitted = await Promise.all(
      Array.from({ length: 12 }, (_, n) => bay.stay(`P${n * 40}`, "2024-02-01 08:00", "2024-02-05 08:00")),
    );
    let isDone = false;
    const editing = (async () => {
      let edits = 0;
      for (; edits < 12 || (!isDone && edits < 400); edits++) {
        // Requests come from outside, so the import has its turn between them.
        await nextTurn();
        const { wardStayId } = admitted[edits % admitted.length] ?? { wardStayId: 0 };
        const startAt = utc("2024-02-01 08:00") + ((edits % 60) + 1) * 3_600_000;
        await correctWardStay(act, { wardStayId, changes: { startAt }, reason: "by hand" });
        const patient = { identifier: `P${(edits * 7) % patients}` };
        const admittedAt = utc("2024-03-04 08:00") + edits * 60_000;
        // Some of them are still in another stay by then, which is refused by name.
        await admitPatient(act, { patient, number: `H${edits}`, admittedAt, wardId: bay.b }).catch(expectedRefusal);
      }
      return edits;
    })();
    const result = await importFiles(act, manyPatients(), { setAside: true });
    isDone = true;
    expect(await editing).toBeGreaterThanOrEqual(12);
    expect(result.state).toBe("applied");
    expect(result.accepted + result.marked + result.unchanged + result.refused).toBe(4 * patients);
    expect((await ledgerOfAll(act)).differences).toBe(0);
  });

  it("refuses what somebody made impossible since it was tried, and stores the rest", async () => {
    const bay = await alderBay(shared.store);
    const moves = ["S1,P1,A,2024-03-01T08:00,2024-03-03T08:00", "S2,P2,A,2024-03-01T08:00,2024-03-03T08:00"];
    const files = { "moves.csv": ["stay,patient,ward,from,to", ...moves] };
    const { store } = shared;
    let isTried = false;
    let admission: Promise<unknown> | undefined;
    const patientAdmittedMeanwhile: typeof store = {
      ...store,
      tx: async (work, options) => {
        if (isTried) admission ??= bay.admit("P1", "2024-03-02 08:00", { number: "H1" });
        await admission;
        return store.tx(work, options);
      },
    };
    const onProgress = ({ phase, done, total }: ImportProgress) => {
      if (phase === "checking" && done === total) isTried = true;
    };
    const result = await importFiles({ ...bay.at(time), store: patientAdmittedMeanwhile }, files, { onProgress });
    expect(resultText(result)).toBe("applied: 1 accepted, 0 marked, 0 unchanged, 1 refused");
    expect((await ledgerOfAll(bay.at(time))).differences).toBe(0);
  });

  it("with an earlier move stores that a catheter was put in here after all, and keeps what was thought before", async () => {
    const bay = await alderBay(shared.store);
    const moves = (line: string) => ({ "moves.csv": ["stay,patient,ward,from,to", line] });
    const catheters = ["stay,catheter,inserted", "S1,C1,2024-03-02T09:00"];
    const arrived = { ...moves("S1,P1,A,2024-03-03T08:00,2024-03-05T08:00"), "catheters.csv": catheters };
    const inPlaceOnArrival = async () => {
      const stay = { facilityId: bay.facilityId };
      const rows = await shared.store.read((read) => read.db.catheter.findMany({ where: { stay } }));
      return rows.map((row) => [row.inPlaceOnArrival, row.version]);
    };
    expect(resultText(await importFiles(bay.at(time), arrived))).toContain("1 accepted, 1 marked");
    expect(await inPlaceOnArrival()).toEqual([[true, 1]]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 2, differences: 0 });
    await importFiles(bay.at(time), moves("S1,P1,B,2024-03-01T08:00,2024-03-03T08:00"));
    expect(await inPlaceOnArrival()).toEqual([[false, 2]]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 4, differences: 0 });
  });

  it("stores counts made by hand, also of a ward that nobody described, and refuses impossible ones", async () => {
    const bay = await alderBay(shared.store);
    const counts = ["ward,day,patients,catheters", "A,2024-03-01,10,3", "D,2024-03-02,4,0"];
    const result = await importFiles(bay.at(time), { "daily-counts.csv": counts });
    expect(resultText(result)).toBe("applied: 2 accepted, 0 marked, 0 unchanged, 0 refused");
    const impossible = [...counts, "A,2024-03-02,3,4", "A,2024-03-11,3,0"];
    const faulty = await importFiles(bay.at(time), { "daily-counts.csv": impossible }, { setAside: true });
    expect(resultText(faulty)).toBe("applied: 0 accepted, 0 marked, 2 unchanged, 2 refused");
    const refused = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: faulty.importId, state: "refused" }, orderBy: { line: "asc" } }),
    );
    expect(refused.map((row) => JSON.parse(row.faults ?? "[]"))).toMatchObject([
      [{ code: "count-impossible", column: "catheters" }],
      [{ code: "in-the-future", column: "day" }],
    ]);
    const stored = await shared.store.read((read) =>
      read.db.dailyCount.findMany({
        where: { ward: { facilityId: bay.facilityId } },
        include: { ward: true },
        orderBy: { day: "asc" },
      }),
    );
    expect(stored.map((row) => [row.ward.code, row.patients, row.catheters])).toEqual([
      ["A", 10, 3],
      ["D", 4, 0],
    ]);
  });
});

function expectedRefusal(error: unknown): void {
  if (!(error instanceof Error) || error.name !== "Problem") throw error;
}
