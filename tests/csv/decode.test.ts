import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeBlocks } from "../../src/csv/decode.ts";
import { inPieces } from "./written-files.ts";

async function blocksOf(bytes: Uint8Array, pieceBytes?: number): Promise<string[]> {
  const blocks: string[] = [];
  for await (const block of decodeBlocks(inPieces(bytes, pieceBytes))) blocks.push(block);
  return blocks;
}

const encoders: Record<string, (text: string) => Uint8Array> = {
  "UTF-8": (text) => Buffer.from(text),
  "UTF-8 with a mark": (text) => Buffer.from(`\uFEFF${text}`),
  "UTF-16, little end first": (text) => Buffer.from(`\uFEFF${text}`, "utf16le"),
  "UTF-16, big end first": (text) => Buffer.from(`\uFEFF${text}`, "utf16le").swap16(),
};

describe("decodeBlocks", () => {
  it.each(Object.entries(encoders))("reads %s wherever the bytes are cut", async (_, encode) => {
    const text = fc.string({ unit: fc.constantFrom(..."aé日😀,\n"), maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(text, fc.integer({ min: 1, max: 9 }), async (one, pieceBytes) => {
        expect((await blocksOf(encode(one), pieceBytes)).join("")).toBe(one);
      }),
      { numRuns: 200 },
    );
  });

  // "ü" is the byte FC in ISO 8859-1; no UTF-8 text holds that byte (RFC 3629, section 3).
  it("puts U+FFFD in the place of bytes that are no character, and keeps the line ends around them", async () => {
    const text = await blocksOf(Buffer.from("S\xfcd,\xe9\nN1\xe4\n", "latin1"));
    expect(text.join("")).toBe("S\uFFFDd,\uFFFD\nN1\uFFFD\n");
  });

  it("shows a character that the end of the file cut off", async () => {
    expect((await blocksOf(Buffer.from("wardé").subarray(0, 5))).join("")).toBe("ward\uFFFD");
    expect((await blocksOf(Buffer.from("\uFEFFward", "utf16le").subarray(0, 9))).join("")).toBe("war\uFFFD");
  });

  it("refuses what is no text", async () => {
    const cases: [Uint8Array, RegExp][] = [
      [Buffer.from([0x50, 0x4b, 0x03, 0x04, 0x14, 0x00]), /workbook/],
      [Buffer.from("ward,name\n", "utf16le"), /zero bytes/],
      [Buffer.from([0xff, 0xfe, 0x00, 0x00, 0x77, 0x00, 0x00, 0x00]), /zero bytes/],
    ];
    for (const [bytes, detail] of cases) {
      for (const pieceBytes of [1, 100]) {
        await expect(blocksOf(bytes, pieceBytes)).rejects.toMatchObject({
          code: "csv-not-text",
          message: expect.stringMatching(detail),
        });
      }
    }
  });

  it("passes a zero byte far inside a text on, to be refused at its line", async () => {
    const text = `${"ward,name\n".repeat(20_000)}N\0`;
    expect((await blocksOf(Buffer.from(text))).join("")).toBe(text);
  });

  it("gives blocks of a bounded size, however large the pieces are", async () => {
    const blocks = await blocksOf(Buffer.from("é".repeat(500_000)));
    expect(blocks.join("")).toHaveLength(500_000);
    expect(blocks.length).toBeGreaterThan(3);
    expect(Math.max(...blocks.map((block) => block.length))).toBeLessThan(2 * 65_536);
  });

  it("gives no block of no bytes", async () => {
    expect(await blocksOf(Buffer.alloc(0))).toEqual([]);
    expect(await blocksOf(Buffer.from("\uFEFF"))).toEqual([]);
  });
});
