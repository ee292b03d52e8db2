import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Row, scanRow } from "../../src/csv/scan-row.ts";

function rowsOf(text: string, delimiter = ","): Row[] {
  const rows: Row[] = [];
  let start = 0;
  let line = 1;
  while (start < text.length) {
    const scanned = scanRow({ text, start, line, delimiter, isLast: true });
    if (scanned === null) throw new Error("the last row of a text is never unfinished");
    rows.push(scanned.row);
    start = scanned.next;
    line = scanned.nextLine;
  }
  return rows;
}

/** What csv-parse makes of a text, or null where it refuses it. */
function parsed(text: string): string[][] | null {
  try {
    return parse(text, { record_delimiter: "\n", relax_column_count: true });
  } catch {
    return null;
  }
}

describe("scanRow", () => {
  // RFC 4180, section 2, rules 1, 2, 5, 6 and 7, with their own examples.
  it.each([
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("reads the example %j", (text, cells) => {
    expect(rowsOf(text).map((row) => row.cells)).toEqual(cells);
  });

  it("splits every text as csv-parse does, and finds trouble where csv-parse refuses it", () => {
    const text = fc.string({ unit: fc.constantFrom("a", "b", ",", '"', '"', "\n"), maxLength: 40 });
    let refused = 0;
    fc.assert(
      fc.property(text, (one) => {
        const rows = rowsOf(one);
        const expected = parsed(one);
        if (expected === null) refused += 1;
        expect(rows.some(({ trouble }) => trouble !== null)).toBe(expected === null);
        if (expected !== null) expect(rows.map(({ cells }) => cells)).toEqual(expected);
      }),
      { numRuns: 2_000 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  it("loses no character: rows, with their line ends, are the text", () => {
    const text = fc.string({ unit: fc.constantFrom("a", ",", '"', "\n", "\r", " "), maxLength: 40 });
    fc.assert(
      fc.property(text, (one) => {
        const withoutEnds = one.replace(/[\r\n]/g, "");
        const rows = rowsOf(one);
        expect(rows.map(({ raw }) => raw.replace(/[\r\n]/g, "")).join("")).toBe(withoutEnds);
      }),
      { numRuns: 1_000 },
    );
  });

  it("goes on with the next physical line after a quote that is out of place", () => {
    const rows = rowsOf('a,"x\ny","open\nb,2\nc,3');
    expect(rows.map(({ line, cells, trouble }) => [line, cells, trouble?.code, trouble?.line, trouble?.cell])).toEqual([
      [1, [], "csv-quote-open", 2, 3],
      [3, ["b", "2"], undefined, undefined, undefined],
      [4, ["c", "3"], undefined, undefined, undefined],
    ]);
    expect(rows[0]?.raw).toBe('a,"x\ny","open');
  });

  it("takes a tab as white space unless it is the delimiter", () => {
    expect(rowsOf('a,\t"b"\t,c')[0]?.cells).toEqual(["a", "b", "c"]);
    expect(rowsOf('a\t"b"\t\tc', "\t")[0]?.cells).toEqual(["a", "b", "", "c"]);
  });

  it.each(["a,b", "a,b\r", 'a,"b', 'a,"b"', 'a,"b" ', 'a"b'])("waits for more after %j", (text) => {
    expect(scanRow({ text, start: 0, line: 1, delimiter: ",", isLast: false })).toBeNull();
  });
});
