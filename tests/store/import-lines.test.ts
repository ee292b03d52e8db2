import { expect, it } from "vitest";
import {
  countLines,
  dropWaiting,
  forgetUnchanged,
  latestFingerprints,
  nextGroups,
  type StagedLine,
  settledLines,
  settleLines,
  stageLines,
  waitingLines,
} from "../../src/store/import-lines.ts";
import { addImport } from "../../src/store/imports.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

const fault = { code: "stay-unknown", column: "stay", detail: "No stay has the number O'7." } as const;

/** A line of a file; what is not said is plain. */
function line(file: string, number: number, more: Partial<StagedLine> = {}): StagedLine {
  const fingerprint = `${file} ${number}`;
  const plain = {
    groupKey: "p P1",
    fingerprint,
    entryKey: fingerprint,
    content: "{}",
    state: "staged",
    faults: null,
    about: null,
  } as const;
  return { file, line: number, ...plain, ...more };
}

onEachDatabase("lines of an import", (fresh) => {
  const shared = sharedStore(fresh);

  async function staged(bay: AlderBay, lines: readonly StagedLine[]): Promise<number> {
    return shared.store.tx(async (tx) => {
      const options = { setAside: false, assumeInpatient: false, sourceId: null };
      const id = await addImport(tx, bay.by("2024-03-01 08:00"), options);
      await stageLines(tx, id, lines);
      return id;
    });
  }

  const counts = (id: number) => shared.store.read((read) => countLines(read, id));

  it("wait in groups, in order, and come back by file and line", async () => {
    const bay = await alderBay(shared.store);
    const id = await staged(bay, [
      line("stays.csv", 10, { content: '{"note":"é \\"x\\""}' }),
      line("stays.csv", 9),
      line("moves.csv", 3),
      line("moves.csv", 2, { groupKey: "p P2" }),
      line("wards.csv", 2, { groupKey: "a" }),
      line("wards.csv", 3, { groupKey: "b", state: "unchanged", content: null }),
      line("wards.csv", 4, { groupKey: "", state: "refused", faults: JSON.stringify([fault]) }),
    ]);
    const groups = (after: string, count: number) => shared.store.read((read) => nextGroups(read, id, after, count));
    expect(await groups("", 2)).toEqual(["a", "p P1"]);
    expect(await groups("p P1", 9)).toEqual(["p P2"]);
    expect(await groups("p P2", 9)).toEqual([]);
    const waiting = await shared.store.read((read) => waitingLines(read, id, ["p P1", "a"]));
    expect(waiting.map((l) => [l.file, l.line, l.content])).toEqual([
      ["wards.csv", 2, "{}"],
      ["moves.csv", 3, "{}"],
      ["stays.csv", 9, "{}"],
      ["stays.csv", 10, '{"note":"é \\"x\\""}'],
    ]);
    expect(await counts(id)).toEqual({ staged: 5, unchanged: 1, refused: 1 });
  });

  it("are settled by what became of them; only a refused one keeps a text, the one of its file", async () => {
    const bay = await alderBay(shared.store);
    const id = await staged(
      bay,
      [1, 2, 3, 4, 5].map((n) => line("stays.csv", n, { content: `{"n":${n}}` })),
    );
    await shared.store.tx((tx) =>
      settleLines(tx, id, [
        { file: "stays.csv", line: 1, raw: "one", about: null, outcome: { state: "accepted" } },
        { file: "stays.csv", line: 2, raw: "two", about: null, outcome: { state: "marked", marks: ["repeated-hour"] } },
        { file: "stays.csv", line: 3, raw: "three", about: null, outcome: { state: "unchanged" } },
        { file: "stays.csv", line: 4, raw: "four", about: null, outcome: { state: "refused", faults: [fault] } },
      ]),
    );
    await shared.store.tx((tx) => settleLines(tx, id, []));
    const rows = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: id }, orderBy: { line: "asc" } }),
    );
    expect(rows.map((row) => [row.state, row.content, row.faults, row.groupKey, row.fingerprint])).toEqual([
      ["accepted", null, null, "p P1", "stays.csv 1"],
      ["marked", null, '["repeated-hour"]', "p P1", "stays.csv 2"],
      ["unchanged", null, null, "p P1", "stays.csv 3"],
      ["refused", "four", JSON.stringify([fault]), "p P1", "stays.csv 4"],
      ["staged", '{"n":5}', null, "p P1", "stays.csv 5"],
    ]);
  });

  it("that were stored are known by the latest one about the same thing, in their own facility alone", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const about = (n: number) => `${bay.facilityId} about ${n}`;
    const lineAbout = (n: number, fingerprint: string) => line("stays.csv", n, { entryKey: about(n), fingerprint });
    const accept = async (lines: readonly StagedLine[], states: readonly ("accepted" | "unchanged" | "refused")[]) => {
      const id = await staged(bay, lines);
      const outcomes = lines.map(({ file, line: number }, i) => {
        const state = states[i] ?? "accepted";
        const said = { file, line: number, raw: "", about: null };
        return { ...said, outcome: state === "refused" ? { state, faults: [fault] } : { state } };
      });
      await shared.store.tx((tx) => settleLines(tx, id, outcomes));
    };
    await accept([lineAbout(1, "A"), lineAbout(2, "A"), lineAbout(3, "A")], ["accepted", "accepted", "refused"]);
    await accept([lineAbout(1, "B"), lineAbout(2, "B")], ["accepted", "refused"]);
    await staged(bay, [lineAbout(1, "C")]);
    const keys = [1, 2, 3, 4].map(about);
    const latest = (facilityId: number) => shared.store.read((read) => latestFingerprints(read, facilityId, keys));
    expect([...(await latest(bay.facilityId))].sort()).toEqual([
      [about(1), "B"],
      [about(2), "A"],
    ]);
    expect(await latest(other.facilityId)).toEqual(new Map());
  });

  it("that wait are dropped when the import is not carried out; refused ones stay for repair", async () => {
    const bay = await alderBay(shared.store);
    const lines = [line("stays.csv", 1), line("stays.csv", 2, { state: "unchanged" })];
    const id = await staged(bay, [...lines, line("stays.csv", 3, { state: "refused", faults: "[]" })]);
    const second = await staged(bay, [line("stays.csv", 1)]);
    await shared.store.tx((tx) => dropWaiting(tx, id));
    expect(await counts(id)).toEqual({ refused: 1 });
    expect(await counts(second)).toEqual({ staged: 1 });
  });

  it("of one outcome are read a page at a time, in the order of files and lines", async () => {
    const bay = await alderBay(shared.store);
    const refused = { state: "refused", faults: "[]" } as const;
    const first = Array.from({ length: 1000 }, (_, i) => line("moves.csv", 1000 - i, refused));
    const id = await staged(bay, [line("stays.csv", 2, refused), ...first, line("stays.csv", 1)]);
    const page = (after: { file: string; line: number } | null) =>
      shared.store.read((read) => settledLines(read, id, { kind: "refused", after }));
    const one = await page(null);
    expect(one.map((row) => row.line)).toEqual(Array.from({ length: 1000 }, (_, i) => i + 1));
    expect(await page(one.at(-1) ?? null)).toEqual([
      { file: "stays.csv", line: 2, faults: "[]", content: "{}", settledBy: null, reason: null },
    ]);
    expect(await page({ file: "stays.csv", line: 2 })).toEqual([]);
  });

  it("stand once: the same line of a file cannot be put down twice", async () => {
    const bay = await alderBay(shared.store);
    await expect(staged(bay, [line("stays.csv", 1), line("stays.csv", 1)])).rejects.toThrow(
      /[Uu]nique|UNIQUE|duplicate key/,
    );
  });

  it("stored before stand beside the waiting ones until they are forgotten, so that none may contradict them", async () => {
    const bay = await alderBay(shared.store);
    const before = line("stays.csv", 1, { state: "unchanged", content: '{"n":1}' });
    const id = await staged(bay, [before, line("stays.csv", 2)]);
    const waiting = async () =>
      (await shared.store.read((read) => waitingLines(read, id, ["p P1"]))).map((l) => [l.line, l.state, l.content]);
    expect(await waiting()).toEqual([
      [1, "unchanged", '{"n":1}'],
      [2, "staged", "{}"],
    ]);
    await shared.store.tx((tx) => forgetUnchanged(tx, id));
    expect(await waiting()).toEqual([[2, "staged", "{}"]]);
    expect(await counts(id)).toEqual({ staged: 1, unchanged: 1 });
  });
});
