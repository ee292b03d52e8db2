/** The first bytes of files that are not text, with what they are. */
const signatures: readonly (readonly [readonly number[], string])[] = [
  [[0x50, 0x4b, 0x03, 0x04], "It is a workbook (or another packed file) that was renamed."],
  [[0x50, 0x4b, 0x05, 0x06], "It is an empty packed file that was renamed."],
  [[0xd0, 0xcf, 0x11, 0xe0], "It is a workbook of an old form that was renamed."],
  [[0x25, 0x50, 0x44, 0x46], "It is a PDF document that was renamed."],
  [[0x1f, 0x8b], "It is a compressed file (gzip)."],
];

/** The number of bytes that {@link signatureOf} wants to see. */
export const signatureBytes = 8;

/**
 * What a file is whose first bytes show that it is no text, as a sentence; null when they do not show it.
 * ZIP local file header and end record: the published ZIP file format specification, sections 4.3.7 and 4.3.16;
 * compound file header: MS-CFB, section 2.2 (both from memory); gzip: RFC 1952, section 2.3.1; PDF: ISO 32000-1, 7.5.2
 * (from memory).
 */
export function signatureOf(head: Uint8Array): string | null {
  const found = signatures.find(([bytes]) => bytes.every((byte, at) => head[at] === byte));
  return found?.[1] ?? null;
}
