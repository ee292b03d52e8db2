import { createHash } from "node:crypto";
import type { CsvLine } from "./items.ts";

/** At six bits a character, 132 bits: two lines of one record never meet by chance. */
const fingerprintCharacters = 22;

/**
 * 22 characters (132 bits of SHA-256 in base64url) by which a line is known again, whatever the order of the columns,
 * the delimiter, the quotes, the white space and the way in which a time is written. Values that are not there are
 * left out, so that a column that a later version adds changes nothing for lines without it.
 */
export function fingerprint(line: CsvLine): string {
  const values = Object.entries(line.values)
    .filter(([, value]) => value !== null)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const digest = createHash("sha256")
    .update(JSON.stringify([line.file, values]))
    .digest("base64url");
  return digest.slice(0, fingerprintCharacters);
}
