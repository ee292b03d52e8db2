import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { importMost } from "../../shared/import-words.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { movesWithFault, workOn } from "./import-work.ts";

const { receiveImport, listImports, readImport, readImportLines, decideImport } = endpoints;

let made = 0;
const fresh = () => `IMP-${++made}`;
const files = [{ name: "moves.csv", text: movesWithFault(fresh) }];

onEachDatabase("files that are sent to be imported", (database) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await database());
  });
  afterAll(() => desk?.close());

  const work = () => workOn(desk.hospital.store);
  const send = async (sent = files) => (await desk.ask(receiveImport, { files: sent })).importId;

  it("of which one breaks off are stored in no part", async () => {
    const importId = await send([
      { name: "wards.csv", text: "ward,setting\nNEW,inpatient\n" },
      { name: "moves.csv", text: "nothing,that,is,known\n1,2,3,4\n" },
    ]);
    await work();
    expect(await desk.ask(readImport, { importId })).toMatchObject({ state: "checked", broken: true });
    const [line] = (await desk.ask(readImportLines, { importId, kind: "refused" })).lines;
    expect(line).toMatchObject({
      file: "moves.csv",
      line: null,
      cells: null,
      faults: [{ code: "csv-header-missing" }],
    });
    const refusal = await desk.refused(decideImport, { importId, decision: "apply", setAside: true });
    expect(refusal.code).toBe("import-file-broken");
  });

  it("are refused when none is known, when they are too many lines, and when they are too large", async () => {
    const unknown = await desk.refused(receiveImport, { files: [{ name: "patient 17.csv", text: "" }] });
    expect([unknown.code, unknown.errors[0]?.pointer]).toEqual(["files-unknown", "/files"]);
    expect(JSON.stringify(unknown)).not.toContain("patient 17");
    const long = [{ name: "moves.csv", text: "\n".repeat(importMost.lines) }];
    expect((await desk.refused(receiveImport, { files: long })).code).toBe("import-too-large");
    const large = [{ name: "moves.csv", text: "x".repeat(importMost.bytes) }];
    expect((await desk.refused(receiveImport, { files: large })).code).toBe("request-too-large");
    // A request that is larger than others may be is taken here.
    expect(
      await send([{ name: "moves.csv", text: `stay,patient,ward,from\n${" ".repeat(1_000_000)}` }]),
    ).toBeGreaterThan(0);
  });

  it("are a matter of those who import, and of their facility alone", async () => {
    const importId = await send();
    for (const person of ["bedside", "manager"] as const) {
      const refusal = await desk.refused(receiveImport, { files }, { person });
      expect(refusal.code).toBe("not-permitted");
      expect((await desk.refused(readImportLines, { importId, kind: "refused" }, { person })).code).toBe(
        "not-permitted",
      );
    }
    expect((await desk.ask(listImports, {}, { person: "administrator" })).imports[0]?.importId).toBe(importId);
    expect((await desk.ask(listImports, {}, { person: "elsewhere" })).imports).toEqual([]);
    const there = await desk.refused(readImport, { importId }, { person: "elsewhere" });
    expect(there.code).toBe("not-found");
  });

  it("are listed a page at a time, newest first", async () => {
    for (let i = 0; i < 21; i++) await send([{ name: "moves.csv", text: movesWithFault(fresh) }]);
    const first = await desk.ask(listImports, {});
    expect(first.imports).toHaveLength(20);
    const second = await desk.ask(listImports, { before: first.next ?? 0 });
    const ids = [...first.imports, ...second.imports].map(({ importId }) => importId);
    expect(ids).toEqual([...ids].sort((a, b) => b - a));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("are not taken by the demo hospital", async () => {
    const demo = (is: boolean) =>
      desk.hospital.store.tx((tx) => tx.db.facility.updateMany({ data: { demo: is } }), { ids: 0 });
    await demo(true);
    expect((await desk.refused(receiveImport, { files })).code).toBe("demo-record");
    await demo(false);
  });
});
