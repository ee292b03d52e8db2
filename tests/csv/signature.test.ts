import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { signatureOf } from "../../src/csv/signature.ts";

describe("signatureOf", () => {
  // The sources of the signatures stand beside the function.
  it.each([
    [[0x50, 0x4b, 0x03, 0x04, 0x14, 0x00], /workbook/],
    [[0x50, 0x4b, 0x05, 0x06, 0x00, 0x00], /packed/],
    [[0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1], /old form/],
    [[...Buffer.from("%PDF-1.7")], /PDF/],
    [[...gzipSync("ward\n")], /gzip/],
  ])("knows %j", (bytes, what) => {
    expect(signatureOf(Uint8Array.from(bytes))).toMatch(what);
  });

  it.each(["", "P", "PK", "PK1,North", "ward,name", "%,"])("takes %j for text", (text) => {
    expect(signatureOf(Buffer.from(text))).toBeNull();
  });
});
