import { stringify } from "csv-stringify/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readSources } from "../../src/csv/read-sources.ts";
import { alderBay, inPieces, sorted } from "./written-files.ts";

/** Text as people write it: letters of several scripts, and all that has a meaning in such files. */
const character = fc.constantFrom(..."ab7É日😀.-_'", '"', ",", ";", " ", "\t", "\n", "\r\n", "\r");
const cellText = fc.array(character, { maxLength: 12 }).map((parts) => parts.join("").trim());
/** An identifier: `W` at the front keeps it from looking like something that a spreadsheet has damaged. */
const ward = fc
  .array(fc.constantFrom(..."ab07É日😀.-_'", '"', ",", ";", " "), { maxLength: 8 })
  .map((parts) => `W${parts.join("")}`.trim());
const row = fc.record({ ward, name: cellText, type: cellText, beds: fc.nat({ max: 9_999 }) });

const written = fc.record({
  rows: fc.array(row, { minLength: 1, maxLength: 30 }),
  order: fc.shuffledSubarray(["ward", "name", "type", "beds"] as const, { minLength: 4 }),
  delimiter: fc.constantFrom(",", ";", "\t"),
  lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
  encoding: fc.constantFrom("utf8", "utf8 with mark", "utf16le", "utf16be"),
  isQuoted: fc.boolean(),
  pieceBytes: fc.integer({ min: 1, max: 400 }),
});
type Written = typeof written extends fc.Arbitrary<infer T> ? T : never;

/** Line breaks inside a text are kept as line feeds. */
const kept = (text: string) => (text === "" ? null : text.replace(/\r\n?/g, "\n"));
const lineBreaks = (text: string) => kept(text)?.split("\n").length ?? 1;

function bytesOf({ rows, order, delimiter, lineEnd, encoding, isQuoted }: Written): Uint8Array {
  const cells = rows.map((one) => order.map((name) => one[name]));
  // The mark that csv-stringify is told to quote beside its own: a lone CR, which it does not take for a line end.
  const text = stringify([[...order], ...cells], {
    delimiter,
    record_delimiter: lineEnd,
    quoted: isQuoted,
    quoted_match: /[\r\n]/,
  });
  if (encoding === "utf8") return Buffer.from(text);
  if (encoding === "utf8 with mark") return Buffer.from(`\uFEFF${text}`);
  const bytes = Buffer.from(`\uFEFF${text}`, "utf16le");
  return encoding === "utf16le" ? bytes : bytes.swap16();
}

/** Where each row begins: the header is line 1, and a line break inside a cell is a line of its own. */
function startLines(rows: Written["rows"]): number[] {
  let next = 2;
  return rows.map(({ name, type }) => {
    const line = next;
    next += lineBreaks(name) + lineBreaks(type) - 1;
    return line;
  });
}

describe("reading what csv-stringify wrote", () => {
  it("gives every value and the physical line of every row back", async () => {
    await fc.assert(
      fc.asyncProperty(written, async (table) => {
        const bytes = bytesOf(table);
        const open = () => inPieces(bytes, table.pieceBytes);
        const { lines, refused } = await sorted(readSources([{ name: "wards.csv", open }], alderBay));
        expect(refused).toEqual([]);
        expect(lines.map(({ line }) => line)).toEqual(startLines(table.rows));
        expect(lines.map(({ values }) => values)).toEqual(
          table.rows.map(({ ward, name, type, beds }) => ({
            ward,
            name: kept(name),
            type: kept(type),
            setting: null,
            beds,
            opened: null,
            closed: null,
          })),
        );
      }),
      { numRuns: 300 },
    );
  });
});
