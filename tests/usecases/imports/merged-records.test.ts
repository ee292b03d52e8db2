import { expect, it } from "vitest";
import { lockPatients } from "../../../src/store/patients.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { gate } from "../../databases/gate.ts";
import { ledgerOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles, ledgerOfAll, linesOf, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const header = "stay,patient,ward,from,to";

onEachDatabase("an import about a person with two records", (fresh) => {
  const shared = sharedStore(fresh);

  /** How many connections to a server wait for a row that another one holds. */
  const waiting = () =>
    shared.store.read(async (read) => {
      const sql = `SELECT count(*)::int AS count FROM pg_stat_activity
        WHERE datname = current_database() AND wait_event_type = 'Lock'`;
      return (await read.db.$queryRawUnsafe<{ count: number }[]>(sql))[0]?.count;
    });

  it("holds the lines of both together, however many patients lie between them", async () => {
    const bay = await alderBay(shared.store);
    const merged = await bay.stay("A1", "2024-02-01 08:00", "2024-02-02 08:00", { number: "S-A" });
    const survivor = await bay.stay("Z9", "2024-02-03 08:00", "2024-02-04 08:00", { number: "S-Z" });
    await mergePatients(bay.at("2024-02-05 08:00"), { fromId: merged.patientId, intoId: survivor.patientId });
    // More than one transaction takes, and each of them sorts between the two.
    const others = Array.from({ length: 520 }, (_, n) => `S${n},P${n},A,2024-03-01T08:00,2024-03-02T08:00`);
    const files: Files = {
      "moves.csv": [
        ...[header, "S-A2,A1,A,2024-03-01T08:00,2024-03-03T08:00", ...others],
        "S-Z2,Z9,B,2024-03-02T08:00,2024-03-04T08:00",
      ],
      "catheters.csv": ["stay,inserted,removed", "S-A2,2024-03-01T09:00,2024-03-02T09:00"],
    };
    // Both claim the person at one time: it is found when the lines are tried, so that nothing is stored.
    const refused = await importFiles(bay.at(time), files);
    expect(resultText(refused)).toBe("refused: 522 accepted, 0 marked, 0 unchanged, 1 refused");
    expect(await linesOf(shared.store, refused.importId)).toEqual(["moves.csv 523 refused"]);
    const mended = { ...files, "moves.csv": [...(files["moves.csv"] ?? []).slice(0, -1)] };
    const last = "S-Z2,Z9,B,2024-03-03T08:00,2024-03-04T08:00";
    const applied = await importFiles(bay.at(time), { ...mended, "moves.csv": [...mended["moves.csv"], last] });
    expect(resultText(applied)).toBe("applied: 523 accepted, 0 marked, 0 unchanged, 0 refused");
    expect((await ledgerOf(shared.store, survivor.patientId)).slice(2)).toEqual([
      ...["2024-03-02 A with catheter", "2024-03-03 A", "2024-03-04 B"],
    ]);
    expect((await ledgerOfAll(bay.at(time))).differences).toBe(0);
  });

  it("takes the survivor when the merge came first while it waited", async () => {
    const bay = await alderBay(shared.store);
    const { store } = shared;
    const one = await bay.stay("P1", "2024-02-01 08:00", "2024-02-02 08:00");
    const two = await bay.stay("P2", "2024-02-03 08:00", "2024-02-04 08:00");
    const rowOf = (id: number) => store.read((read) => read.db.patient.findUniqueOrThrow({ where: { id } }));
    const [locked, go] = [gate(), gate()];
    const merging = store.tx(async (tx) => {
      await lockPatients(tx, bay.facilityId, [one.patientId, two.patientId]);
      locked.open();
      await go.opened;
      const into = { survivorId: two.patientId, mergedIntoId: two.patientId };
      await tx.db.patient.update({ where: { id: one.patientId }, data: into });
      await tx.db.patientDay.updateMany({ where: { patientId: one.patientId }, data: { patientId: two.patientId } });
    });
    await locked.opened;
    const files = { "moves.csv": [header, "S9,P1,A,2024-03-01T08:00,2024-03-03T08:00"] };
    const importing = importFiles(bay.at(time), files);
    // On SQLite the import waits before its first line; on a server, for the patient's row.
    if (store.kind === "postgresql") await expect.poll(waiting, { timeout: 10_000 }).toBe(1);
    const { version } = await rowOf(two.patientId);
    go.open();
    await merging;
    expect(resultText(await importing)).toBe("applied: 1 accepted, 0 marked, 0 unchanged, 0 refused");
    expect((await rowOf(two.patientId)).version).toBe(version + 2);
    expect((await ledgerOf(store, two.patientId)).slice(2)).toEqual(["2024-03-02 A", "2024-03-03 A"]);
    expect((await ledgerOfAll(bay.at(time))).differences).toBe(0);
  });
});
