import { expect, it } from "vitest";
import { type RefusedLine, refusedLines } from "../../../src/usecases/imports/read-refused.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles } from "./files.ts";

onEachDatabase("the refused lines of an import", (fresh) => {
  const shared = sharedStore(fresh);

  async function read(importId: number): Promise<RefusedLine[]> {
    const found: RefusedLine[] = [];
    for await (const line of refusedLines(shared.store, importId)) found.push(line);
    return found;
  }

  it("come in the order of files and lines, however many there are, a whole file without a line", async () => {
    const bay = await alderBay(shared.store);
    const header = "stay,patient,ward,from,to";
    const bad = Array.from({ length: 1500 }, (_, i) => `S${i},P${i},A,,`);
    const result = await importFiles(bay.at("2024-03-10 12:00"), {
      "moves.csv": [header, "S0,P0,A,2024-03-01T08:00,", ...bad],
      "catheters.csv": ["inserted", "2024-03-01T08:00"],
    });
    const found = await read(result.importId);
    expect(found).toHaveLength(1501);
    expect(found[0]).toMatchObject({
      file: "catheters.csv",
      line: null,
      faults: [{ code: "csv-column-missing", line: 1, column: "stay", remedy: expect.any(String) }],
    });
    expect(found.slice(1).map((line) => line.line)).toEqual(bad.map((_, i) => i + 3));
    expect(found[1]).toMatchObject({ file: "moves.csv", faults: [{ code: "csv-cell-empty", column: "from" }] });
  });

  it("are none when none was refused", async () => {
    const bay = await alderBay(shared.store);
    const { importId } = await importFiles(bay.at("2024-03-10 12:00"), { "wards.csv": ["ward", "C"] });
    expect(await read(importId)).toEqual([]);
  });
});
