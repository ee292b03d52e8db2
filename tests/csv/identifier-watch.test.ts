import { describe, expect, it } from "vitest";
import { IdentifierWatch } from "../../src/csv/identifier-watch.ts";
import { readSources } from "../../src/csv/read-sources.ts";
import { alderBay, inPieces, sorted } from "./written-files.ts";

async function notices(files: Readonly<Record<string, string>>) {
  const sources = Object.entries(files).map(([name, text]) => ({ name, open: () => inPieces(Buffer.from(text)) }));
  const watch = new IdentifierWatch();
  for (const line of (await sorted(readSources(sources, alderBay))).lines) watch.add(line);
  return watch.notices();
}

describe("IdentifierWatch", () => {
  it("compares a column over all files and repeats no identifier", async () => {
    const found = await notices({ "stays.csv": "stay,patient\n0091,P1\n", "catheters.csv": "stay\n12\n91\n" });
    expect(found).toEqual([
      {
        type: "notice",
        code: "zeros-lost",
        file: null,
        detail:
          "In the column stay two identifiers differ only by zeros at the front (catheters.csv line 3 and stays.csv line 2): a spreadsheet may have dropped them. They are taken as two.",
      },
    ]);
  });

  it("does not compare columns of different names, nor columns that hold no identifiers", async () => {
    expect(await notices({ "stays.csv": "stay,patient,sex\n7,0008,007\n8,0007,7\n" })).toEqual([]);
  });

  it("tells of shorter numbers where no two numbers are alike", async () => {
    const found = await notices({ "stays.csv": "stay,patient\n1,0071\n2,93\n" });
    expect(found).toMatchObject([{ code: "zeros-lost", detail: expect.stringContaining("4 digits") }]);
    expect(found[0]?.detail).toContain("stays.csv line 3");
  });

  it("tells of long numbers that were cut", async () => {
    const found = await notices({ "stays.csv": "stay,patient\n1,1234567890123450\n2,6543210987654320\n" });
    expect(found).toMatchObject([{ code: "digits-lost", detail: expect.stringContaining("column patient") }]);
  });
});
