import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

const control = /[^\P{Cc}\n\t]/u;

/**
 * Free text, in Unicode's composed form (NFC); line breaks inside it become a single line feed.
 * Refuses other control characters (`csv-character`).
 */
export const text: CellReader<string> = {
  isIdentifier: false,
  read(cell) {
    const written = cell.replace(/\r\n?/g, "\n");
    if (control.test(written)) return refuse("csv-character", "It holds a control character.");
    return written.normalize("NFC");
  },
};
