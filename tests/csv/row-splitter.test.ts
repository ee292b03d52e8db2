import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RowSplitter } from "../../src/csv/row-splitter.ts";
import type { Row } from "../../src/csv/scan-row.ts";

/** The rows of a text that comes in blocks cut at these places. */
function split(text: string, cuts: readonly number[] = []): { rows: Row[]; endless: number | undefined } {
  const splitter = new RowSplitter(",", 1);
  const places = [0, ...cuts.filter((cut) => cut < text.length), text.length].sort((a, b) => a - b);
  const blocks = places.slice(1).map((end, index) => text.slice(places[index], end));
  const rows = blocks.flatMap((block) => splitter.push(block, false));
  rows.push(...splitter.push("", true));
  return { rows, endless: splitter.endless?.line };
}

describe("RowSplitter", () => {
  it("gives the same rows wherever the blocks are cut", () => {
    const text = fc.string({ unit: fc.constantFrom("a", "b", ",", '"', '"', "\n", "\r", "\r\n", " "), maxLength: 60 });
    const cuts = fc.array(fc.nat({ max: 60 }), { maxLength: 20 });
    fc.assert(
      fc.property(text, cuts, (one, at) => {
        expect(split(one, at)).toEqual(split(one));
      }),
      { numRuns: 2_000 },
    );
  });

  it("stops at a row of more than 20,000 characters, whether or not it ends, and holds no more of it", () => {
    const fits = "x".repeat(19_999);
    expect(split(`a\n${fits}\nb\n`)).toMatchObject({ rows: [{ cells: ["a"] }, { cells: [fits] }, { cells: ["b"] }] });
    expect(split(`a\n${fits}xx\nb\n`)).toMatchObject({ rows: [{ cells: ["a"] }], endless: 2 });
    expect(split("a\n".padEnd(50_000, "x"), [10_000, 20_000, 30_000])).toMatchObject({ endless: 2 });
  });

  it("takes a quote that is open over more than 10,000 characters for one that is never closed", () => {
    const closed = `a,"${"x\n".repeat(4_999)}"\nb\n`;
    expect(split(closed).rows.map(({ line }) => line)).toEqual([1, 5_001]);
    const { rows } = split(`a,"b\n${"c\n".repeat(6_000)}d"\n`, [100, 9_000, 10_001]);
    expect(rows[0]).toMatchObject({ line: 1, raw: 'a,"b', trouble: { code: "csv-quote-open", line: 1, cell: 2 } });
    expect(rows[1]).toMatchObject({ line: 2, cells: ["c"] });
  });
});
