import { expect, it } from "vitest";
import { checkImport } from "../../../src/usecases/imports/check-import.ts";
import { endImport, importLines } from "../../../src/usecases/imports/import-lines.ts";
import type { ImportProgress } from "../../../src/usecases/imports/intake-item.ts";
import { stageImport } from "../../../src/usecases/imports/stage-import.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, everything } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles, itemsOf, ledgerOfAll, linesOf, resultText } from "./files.ts";

const files: Files = {
  "moves.csv": [
    "stay,patient,ward,from,to",
    "S1,P1,A,2024-03-01T08:00,2024-03-05T08:00",
    "S2,P2,A,2024-03-02T08:00,2024-03-03T08:00",
    "S2,P2,B,2024-03-03T09:00,",
  ],
  "catheters.csv": ["stay,inserted,removed", "S1,2024-03-01T07:00,2024-03-03T08:00", "S2,2024-03-02T09:00,"],
};
const overlapping: Files = { ...files, "moves.csv": [...(files["moves.csv"] ?? []), "S1,P1,B,2024-03-04T08:00,"] };
const time = "2024-03-10 12:00";
/** What a person sees of the record: everything but the books of the import itself. */
const books = new Set(["import", "import_line", "import_source", "audit_entry", "audit_patient"]);

onEachDatabase("importing lines", (fresh) => {
  const shared = sharedStore(fresh);

  async function record(): Promise<unknown> {
    return Object.entries(await everything(shared.store)).filter(([table]) => !books.has(table));
  }

  it("stores them, tells what became of each, and leaves an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const result = await importFiles(bay.at(time), files);
    expect(resultText(result)).toBe("applied: 3 accepted, 2 marked, 0 unchanged, 0 refused");
    expect(await linesOf(shared.store, result.importId)).toEqual([
      ...["catheters.csv 2 marked", "catheters.csv 3 accepted"],
      ...["moves.csv 2 accepted", "moves.csv 3 marked", "moves.csv 4 accepted"],
    ]);
    // P1 at midnight on 2 to 5 March; P2 closed on the 3rd only, since its last stretch still lasts.
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 5, differences: 0 });
    const audit = await auditOf(shared.store, bay.facilityId);
    expect(
      audit.filter(({ action }) => action.startsWith("import")).map((a) => [a.action, a.patientIds.length]),
    ).toEqual([
      ["import-lines", 2],
      ["import", 0],
    ]);
    expect(audit.at(-1)).toMatchObject({ personId: bay.personId, details: { accepted: 3, marked: 2 } });
  });

  it("tries them in a dry run, tells everything and stores nothing", async () => {
    const bay = await alderBay(shared.store);
    const before = await record();
    const well = await importFiles(bay.at(time), files, { dryRun: true });
    expect(resultText(well)).toBe("dry-run: 5 accepted, 0 marked, 0 unchanged, 0 refused");
    const faulty = await importFiles(bay.at(time), overlapping, { dryRun: true });
    expect(resultText(faulty)).toBe("dry-run: 5 accepted, 0 marked, 0 unchanged, 1 refused");
    expect(await linesOf(shared.store, faulty.importId)).toEqual(["moves.csv 5 refused"]);
    expect(await record()).toEqual(before);
    // A dry run makes no line known: the import itself stores them all.
    expect(resultText(await importFiles(bay.at(time), files))).toContain("3 accepted, 2 marked, 0 unchanged");
  });

  it("stores nothing when one line is refused, and keeps that line with its faults and what it said", async () => {
    const bay = await alderBay(shared.store);
    const before = await record();
    const result = await importFiles(bay.at(time), overlapping);
    expect(resultText(result)).toBe("refused: 5 accepted, 0 marked, 0 unchanged, 1 refused");
    expect(await record()).toEqual(before);
    const kept = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: result.importId } }),
    );
    expect(kept).toMatchObject([{ file: "moves.csv", line: 5, state: "refused" }]);
    expect(JSON.parse(kept[0]?.faults ?? "")).toMatchObject([
      { code: "move-overlaps", column: "from", other: "moves.csv line 2" },
    ]);
    expect(kept[0]?.content).toContain("S1,P1,B,2024-03-04T08:00,");
  });

  it("stores the rest when refused lines are set aside", async () => {
    const bay = await alderBay(shared.store);
    const result = await importFiles(bay.at(time), overlapping, { setAside: true });
    expect(resultText(result)).toBe("applied: 3 accepted, 2 marked, 0 unchanged, 1 refused");
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 5, differences: 0 });
  });

  it("stores nothing of a folder in which a file breaks off, even when lines are to be set aside", async () => {
    const bay = await alderBay(shared.store);
    const before = await record();
    const broken = { ...files, "stays.csv": ["stay,patient,unheard-of", "S1,P1,x"] };
    const result = await importFiles(bay.at(time), broken, { setAside: true });
    expect(result).toMatchObject({ state: "refused", refused: 1 });
    expect(await record()).toEqual(before);
  });

  it("tells how far it is, and ends each phase at its total", async () => {
    const bay = await alderBay(shared.store);
    const progress: ImportProgress[] = [];
    const onProgress = (step: ImportProgress) => void progress.push(step);
    await importFiles(bay.at(time), overlapping, { setAside: true, onProgress });
    const phase = (name: string) => progress.filter((step) => step.phase === name).map((s) => [s.done, s.total]);
    // Six lines are read and tried; the refused one is not stored.
    expect(phase("reading")).toEqual([[6, null]]);
    expect(phase("checking")).toEqual([
      [0, 6],
      [6, 6],
    ]);
    expect(phase("applying")).toEqual([
      [0, 5],
      [5, 5],
    ]);
    progress.length = 0;
    await importFiles(bay.at(time), files, { onProgress });
    expect(progress.map((step) => [step.phase, step.done, step.total])).toEqual([
      ["reading", 5, null],
      ["checking", 0, 0],
      ["applying", 0, 0],
    ]);
  });

  it("leaves nothing behind when the door cannot be opened", async () => {
    const bay = await alderBay(shared.store);
    const before = await everything(shared.store);
    const options = { dryRun: false, setAside: false, assumeInpatient: false };
    await expect(importLines(bay.at(time), itemsOf({ "notes.txt": ["x"] }), options)).rejects.toThrow(
      "It holds none of the files",
    );
    expect(await everything(shared.store)).toEqual(before);
  });

  it("ends with what was counted, and an import that is dropped loses the lines that waited", async () => {
    const bay = await alderBay(shared.store);
    const options = { dryRun: false, setAside: true, assumeInpatient: false };
    const { importId, waiting: total, claim } = await stageImport(bay.at(time), itemsOf(overlapping), options);
    await checkImport(bay.at(time), { importId, total }, options);
    expect(await linesOf(shared.store, importId)).toHaveLength(6);
    const ended = await endImport(bay.at(time), importId, "refused");
    await claim.release();
    expect(resultText(ended)).toBe("refused: 5 accepted, 0 marked, 0 unchanged, 1 refused");
    expect(await linesOf(shared.store, importId)).toEqual(["moves.csv 5 refused"]);
    const row = await shared.store.read((read) => read.db.import.findUniqueOrThrow({ where: { id: importId } }));
    const { files: _, ...counts } = ended;
    expect(JSON.parse(row.summary ?? "")).toEqual(counts);
    expect(row.finishedAt?.toISOString()).toBe("2024-03-10T12:00:00.000Z");
  });
});
