import { describe, expect, it } from "vitest";
import { FileReader } from "../../src/csv/file-reader.ts";
import { alderBay, layoutOf } from "./written-files.ts";

function read(...blocks: string[]) {
  const reader = new FileReader(layoutOf("wards.csv"), alderBay);
  const items = blocks.map((block) => reader.take(block));
  return { items, end: reader.end(), isStopped: reader.isStopped };
}

describe("FileReader", () => {
  it("gives the lines with the block that completes them", () => {
    expect(read("ward,name\nN1,North\nS1,So", "uth\nE1", ",East")).toMatchObject({
      items: [[{ line: 2 }], [{ line: 3, raw: "S1,South" }], []],
      end: [{ line: 4, raw: "E1,East" }],
      isStopped: false,
    });
  });

  it("says that there was a header alone", () => {
    expect(read("ward,name\n")).toMatchObject({ items: [[]], end: [{ type: "notice", code: "header-only" }] });
    expect(read("ward\nN1,too many")).toMatchObject({ items: [[]], end: [{ type: "refused" }] });
  });

  it("counts rows without anything in them, also of quoted cells, and names their lines", () => {
    const blanks = [3, 5, 6].map((line) => ({ type: "blank", file: "wards.csv", line }));
    expect(read('ward,name\nN1,North\n"",""\nN2,\n," "\n\n')).toMatchObject({
      items: [[{ line: 2 }, blanks[0], { line: 4 }, blanks[1], blanks[2]]],
      end: [{ type: "notice", code: "rows-blank", detail: "3 rows are blank: lines 3, 5, 6." }],
    });
    expect(read("ward,name\n,\n").end).toMatchObject([
      { code: "header-only" },
      { code: "rows-blank", detail: "1 row is blank: line 2." },
    ]);
    expect(read(`ward,name\nN1,\n${",\n".repeat(30)}`).end).toMatchObject([
      { detail: expect.stringMatching(/^30 rows are blank: lines 3, .*, 22 and more\.$/) },
    ]);
  });

  it("refuses a file without anything in it", () => {
    expect(read()).toMatchObject({ end: [{ wholeFile: true, faults: [{ code: "csv-empty" }] }], isStopped: true });
    expect(read("\n\n")).toMatchObject({ items: [[]], end: [{ faults: [{ code: "csv-empty" }] }] });
  });

  it("reads nothing behind a header that is wrong or a line that does not end", () => {
    expect(read("wing\nN1\n", "N2\n")).toMatchObject({
      items: [[{ wholeFile: true, line: 1, faults: [{ code: "csv-header-missing" }] }], []],
      end: [],
      isStopped: true,
    });
    expect(read("ward\nN1\n", "x".repeat(30_000), "\nN2\n")).toMatchObject({
      items: [[{ line: 2 }], [{ wholeFile: true, line: 3, faults: [{ code: "csv-line-too-long" }] }], []],
      end: [],
      isStopped: true,
    });
  });
});
