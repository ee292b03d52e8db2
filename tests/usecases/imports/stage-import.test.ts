import { expect, it } from "vitest";
import { stageImport } from "../../../src/usecases/imports/stage-import.ts";
import { correctCatheter, correctStay } from "../../../src/usecases/record/correct-entry.ts";
import { insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { voidCatheter, voidStay } from "../../../src/usecases/record/void-entry.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { everything } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { type Files, importFiles, itemsOf, ledgerOfAll, linesOf, resultText } from "./files.ts";

const files: Files = {
  "stays.csv": ["stay,patient,admitted,discharged", "S1,P1,2024-03-01T08:00,2024-03-05T08:00"],
  "moves.csv": ["stay,patient,ward,from,to", "S1,P1,A,2024-03-01T08:00,2024-03-05T08:00"],
  "catheters.csv": ["stay,inserted,removed", "S1,2024-03-02T09:00,2024-03-03T09:00"],
};
const time = "2024-03-10 12:00";
const reason = "seen in the paper chart";

onEachDatabase("lines that arrive", (fresh) => {
  const shared = sharedStore(fresh);

  async function entryIds() {
    const bay = await alderBay(shared.store);
    await importFiles(bay.at(time), files);
    const stay = await shared.store.read((read) =>
      read.db.stay.findFirstOrThrow({ where: { facilityId: bay.facilityId }, include: { catheters: true } }),
    );
    return { bay, stayId: stay.id, catheterId: stay.catheters[0]?.id ?? 0 };
  }

  const record = async () => {
    const { stay, ward_stay, catheter, patient_day, entry_version } = await everything(shared.store);
    return { stay, ward_stay, catheter, patient_day, entry_version };
  };

  it("are known again, whatever the order of columns or the way in which times are written", async () => {
    const { bay } = await entryIds();
    const before = await record();
    const rewritten: Files = {
      "stays.csv": ["patient;stay;discharged;admitted", "P1;S1;2024-03-05 08:00;2024-03-01T08:00:00Z"],
      "moves.csv": ["stay,patient,ward,bed,from,to", "S1,P1,A,,2024-03-01T08:00,2024-03-05T08:00"],
    };
    const again = await importFiles(bay.at(time), rewritten);
    expect(resultText(again)).toBe("applied: 0 accepted, 0 marked, 2 unchanged, 0 refused");
    expect(await record()).toEqual(before);
  });

  it("never undo what was corrected by hand since they were stored", async () => {
    const { bay, stayId, catheterId } = await entryIds();
    await correctCatheter(bay.at(time), { catheterId, changes: { removedAt: utc("2024-03-04 09:00") }, reason });
    await correctStay(bay.at(time), { stayId, changes: { dischargedAt: utc("2024-03-06 08:00") }, reason });
    const corrected = await record();
    const again = await importFiles(bay.at(time), files);
    expect(resultText(again)).toBe("applied: 0 accepted, 0 marked, 3 unchanged, 0 refused");
    expect(await record()).toEqual(corrected);
    await voidCatheter(bay.at(time), { catheterId, reason });
    await voidStay(bay.at(time), { stayId, reason });
    const voided = await record();
    await importFiles(bay.at(time), files);
    expect(await record()).toEqual(voided);
  });

  it("also not when they only said what somebody had recorded by hand before them", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 08:00", "2024-03-05 08:00", { number: "S1" });
    const times = { insertedAt: utc("2024-03-02 09:00"), removedAt: utc("2024-03-03 09:00") };
    const kind = "indwelling-urethral" as const;
    const { catheterId } = await insertCatheter(bay.at(time), { stayId, kind, inPlaceOnArrival: false, ...times });
    const first = await importFiles(bay.at(time), files);
    expect(resultText(first)).toBe("applied: 0 accepted, 0 marked, 3 unchanged, 0 refused");
    await correctCatheter(bay.at(time), { catheterId, changes: { removedAt: utc("2024-03-04 09:00") }, reason });
    const corrected = await record();
    expect(resultText(await importFiles(bay.at(time), files))).toContain("3 unchanged");
    expect(await record()).toEqual(corrected);
  });

  it("that were stored before let no new line of their folder contradict them, today as the first time", async () => {
    const bay = await alderBay(shared.store);
    const contradicting: Files = {
      "stays.csv": [...(files["stays.csv"] ?? []), "S1,P1,2024-03-01T08:00,2024-03-07T08:00"],
      "moves.csv": [...(files["moves.csv"] ?? []), "S1,P1,A,2024-03-01T08:00,2024-03-04T08:00"],
      "catheters.csv": [...(files["catheters.csv"] ?? []), "S1,2024-03-02T09:00,2024-03-04T09:00"],
    };
    // Of two moves that begin together, the shorter comes first.
    const lines = (state: string) => [
      ...[`catheters.csv 2 ${state}`, "catheters.csv 3 refused"],
      ...["moves.csv 2 refused", `moves.csv 3 ${state}`],
      ...[`stays.csv 2 ${state}`, "stays.csv 3 refused"],
    ];
    const first = await importFiles(bay.at(time), contradicting, { setAside: true });
    expect(await linesOf(shared.store, first.importId)).toEqual(lines("accepted"));
    const before = await record();
    const second = await importFiles(bay.at(time), contradicting, { setAside: true });
    expect(await linesOf(shared.store, second.importId)).toEqual(lines("unchanged"));
    expect(await record()).toEqual(before);
    // What the known lines said is not kept a second time.
    const kept = await shared.store.read((read) =>
      read.db.importLine.count({ where: { importId: second.importId, state: "unchanged", content: { not: null } } }),
    );
    expect(kept).toBe(0);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 3, differences: 0 });
  });

  it("wait in batches, and those that wait are told", async () => {
    const bay = await alderBay(shared.store);
    const moves = Array.from({ length: 2100 }, (_, i) => `S${i},P${i % 50},A,2024-03-01T08:00,`);
    const options = { dryRun: true, setAside: false, assumeInpatient: false };
    const reported: number[] = [];
    const items = itemsOf({ "moves.csv": ["stay,patient,ward,from,to", ...moves, "S0,P9,A,2024-03-01T08:00,", "x"] });
    const staged = await stageImport(bay.at(time), items, {
      ...options,
      onProgress: ({ done }) => reported.push(done),
    });
    // Stay S0 is P0's, and the last line has too few cells.
    expect(staged).toMatchObject({ importId: expect.any(Number), waiting: 2100, total: 2102, brokenOff: false });
    await staged.claim.release();
    expect(reported).toEqual([2000, 2102]);
    const refused = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: staged.importId, state: "refused" }, orderBy: { line: "asc" } }),
    );
    expect(refused.map((row) => [row.line, row.content])).toEqual([
      [2102, "S0,P9,A,2024-03-01T08:00,"],
      [2103, "x"],
    ]);
  });
});
