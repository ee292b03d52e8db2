import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";
import { workOn } from "./import-work.ts";

const { receiveImport, readImport, readImportLines, decideImport } = endpoints;
const { repairImportLine, dropImportLine, readWardMonth, findPatients } = endpoints;

/** Four moves: one good, one that ends before it began, one whose ward nobody named, one with an open quote. */
const header = "patient;stay;ward;from;to;bed";
const moves = [
  header,
  "M-1;T-1;3E;2026-11-10T08:00;2026-11-12T08:00;7",
  "M-2;T-2;3E;2026-11-10T08:00;2026-11-09T08:00;8",
  "M-3;T-3;;2026-11-10T08:00;2026-11-12T08:00;9",
].join("\r\n");
const catheters = "stay,inserted,removed\nT-1,2026-11-10T09:00,2026-11-11T09:00\nT-2,2026-11-10T09:00,\n";
const files = [
  { name: "catheters.csv", text: catheters },
  { name: "export/Moves.csv", text: moves },
  { name: "notes.txt", text: "anything" },
];

onEachDatabase("files that are sent to be imported", (database) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await database());
  });
  afterAll(() => desk?.close());

  const work = () => workOn(desk.hospital.store);
  const send = async (sent = files) => (await desk.ask(receiveImport, { files: sent })).importId;
  const linesOf = async (importId: number, kind: "refused" | "dropped" | "repaired" = "refused") =>
    (await desk.ask(readImportLines, { importId, kind })).lines;
  const daysOf3E = async () => {
    const { sheet } = await desk.ask(readWardMonth, { wardId: desk.hospital.wards["3E"], month: "2026-11" as never });
    return [2, 3].map((at) => sheet.rows.reduce((sum, row) => sum + Number(row[at]), 0));
  };

  it("are read, tried, decided, repaired and counted", async () => {
    const before = await daysOf3E();
    const importId = await send();
    expect(await desk.ask(readImport, { importId })).toMatchObject({ state: "received", files: [], effects: null });
    await work();
    const tried = await desk.ask(readImport, { importId });
    expect(tried).toMatchObject({
      state: "checked",
      startedByName: "Ash Moreno",
      progress: null,
      broken: false,
      counts: { waiting: 2, refused: 3, accepted: 0 },
      effects: { stays: { added: 1, changed: 0 }, moves: { added: 1 }, catheters: { added: 1 }, wards: { added: 0 } },
    });
    expect(tried.files.map(({ file, counts }) => [file, counts.waiting, counts.refused])).toEqual([
      ["catheters.csv", 1, 1],
      ["moves.csv", 1, 2],
    ]);
    expect(tried.notices).toEqual([{ file: "notes.txt", detail: expect.stringContaining("not read") }]);
    // Nothing counts before somebody decides.
    expect(await daysOf3E()).toEqual(before);
    await refusedLinesStand(importId);
    const refusal = await desk.refused(decideImport, { importId, decision: "apply", setAside: false });
    expect(refusal.code).toBe("import-lines-refused");
    await desk.ask(decideImport, { importId, decision: "apply", setAside: true });
    await work();
    expect(await desk.ask(readImport, { importId })).toMatchObject({
      state: "applied",
      counts: { waiting: 0, accepted: 2, refused: 3 },
    });
    // Two midnights on the ward, one of them with the catheter: counted by hand.
    expect(await daysOf3E()).toEqual([(before[0] ?? 0) + 2, (before[1] ?? 0) + 1]);
    await repaired(importId, before);
  });

  /** Each refused line stands beside what is wrong with it, divided by the file's own header. */
  async function refusedLinesStand(importId: number): Promise<void> {
    const lines = await linesOf(importId);
    expect(lines.map(({ file, line, text, faults }) => [file, line, text, faults.map(({ code }) => code)])).toEqual([
      ["catheters.csv", 3, "T-2,2026-11-10T09:00,", ["stay-unknown"]],
      ["moves.csv", 3, "M-2;T-2;3E;2026-11-10T08:00;2026-11-09T08:00;8", ["end-before-start"]],
      ["moves.csv", 4, "M-3;T-3;;2026-11-10T08:00;2026-11-12T08:00;9", ["csv-cell-empty"]],
    ]);
    const cells = Object.fromEntries((lines[1]?.cells ?? []).map(({ column, value }) => [column, value]));
    expect(cells).toEqual({
      ...{ stay: "T-2", patient: "M-2", ward: "3E", bed: "8" },
      ...{ from: "2026-11-10T08:00", to: "2026-11-09T08:00", absence: "" },
    });
    expect(lines[1]?.faults[0]).toMatchObject({ column: "to", line: null, remedy: expect.stringMatching(/\.$/) });
  }

  async function repaired(importId: number, before: readonly number[]): Promise<void> {
    const place = { importId, file: "moves.csv", line: 3 };
    const values = { stay: "T-2", patient: "M-2", ward: "3E", from: "2026-11-10T08:00", to: "2026-11-11T08:00" };
    const still = await desk.refused(repairImportLine, { ...place, values: { ...values, to: "2026-11-08T08:00" } });
    expect(still.errors.map(({ code, pointer }) => [code, pointer])).toEqual([["end-before-start", "/values/to"]]);
    const unread = await desk.refused(repairImportLine, { ...place, values: { ...values, from: "tomorrow" } });
    expect(unread.errors[0]).toMatchObject({ code: "time-unreadable", pointer: "/values/from" });
    expect(await desk.ask(repairImportLine, { ...place, values })).toEqual({ state: "accepted", marks: [] });
    expect(await daysOf3E()).toEqual([(before[0] ?? 0) + 3, (before[1] ?? 0) + 1]);
    // The catheter of that stay was refused only because its stay was; it is still in at discharge, so it counts a day.
    const catheter = { importId, file: "catheters.csv", line: 3 };
    await desk.ask(repairImportLine, { ...catheter, values: { stay: "T-2", inserted: "2026-11-10T09:00" } });
    expect(await daysOf3E()).toEqual([(before[0] ?? 0) + 3, (before[1] ?? 0) + 2]);
    const again = await desk.refused(repairImportLine, { ...place, values });
    expect(again.code).toBe("line-not-set-aside");
    const dropped = { importId, file: "moves.csv", line: 4 };
    expect(await desk.ask(dropImportLine, { ...dropped, reason: "Not our ward" })).toEqual({ importId, refused: 0 });
    expect((await desk.refused(dropImportLine, { ...dropped, reason: "Again" })).code).toBe("line-not-set-aside");
    expect(await linesOf(importId)).toEqual([]);
    expect(await linesOf(importId, "dropped")).toMatchObject([{ line: 4, reason: "Not our ward" }]);
    expect((await linesOf(importId, "repaired")).map(({ file, line }) => `${file} ${line}`)).toEqual([
      "catheters.csv 3",
      "moves.csv 3",
    ]);
    expect((await desk.ask(readImport, { importId })).counts).toMatchObject({ accepted: 4, refused: 0, dropped: 1 });
  }

  it("leave a record of who sent, saw, decided and repaired, with nothing of a patient in it", async () => {
    const { facilityId } = await desk.ask(endpoints.readFacility, {});
    const audit = await auditOf(desk.hospital.store, facilityId, lookedAt);
    const actions = audit.map(({ action }) => action);
    const expected = ["receive-files", "view-import-lines", "decide-import", "import", "repair-line", "drop-line"];
    expect(actions).toEqual(expect.arrayContaining(expected));
    const repairs = audit.filter(({ action }) => action === "repair-line");
    const { patients } = await desk.ask(findPatients, { identifier: "M-2" });
    expect(repairs.map(({ patientIds }) => patientIds.length)).toContain(1);
    expect(repairs.flatMap(({ patientIds }) => patientIds)).toContain(patients[0]?.patientId);
    expect(JSON.stringify(audit)).not.toMatch(/M-\d|T-\d/);
  });

  it("change nothing when they come again, and are discarded", async () => {
    const text = "stay,patient,ward,from,to\nD-1,DP-1,3E,2026-11-10T08:00,2026-11-11T08:00\n";
    for (const waiting of [1, 0]) {
      const importId = await send([{ name: "moves.csv", text }]);
      await work();
      const { counts } = await desk.ask(readImport, { importId });
      expect([counts.waiting, counts.unchanged]).toEqual([waiting, 1 - waiting]);
      await desk.ask(decideImport, { importId, decision: waiting === 1 ? "apply" : "discard", setAside: false });
      await work();
      const state = waiting === 1 ? "applied" : "discarded";
      expect(await desk.ask(readImport, { importId })).toMatchObject({ state, finishedAt: lookedAt });
      const late = await desk.refused(decideImport, { importId, decision: "apply", setAside: true });
      expect(late.code).toBe("import-not-waiting");
    }
  });
});
