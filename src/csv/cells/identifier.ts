import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

const plainAscii = /^[ -~]*$/;
/** Control characters and such that nobody sees, by which two identifiers could differ and look the same. */
const unseen = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;

/** What spreadsheets make of identifiers, with the reason that people are told. The first match counts. */
const damages: readonly (readonly [RegExp, string])[] = [
  [/^[+-]?\d+([.,]\d+)?E[+-]\d+$/i, "It is a number in scientific notation, whose last digits are gone."],
  [/^#+$/, "It is what a spreadsheet shows when a column is too narrow."],
  [/^#(N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|DIV\/0!|SPILL!|CALC!)$/i, "It is the error of a spreadsheet's formula."],
  [/^=/, "It is a spreadsheet's formula."],
  [/^\d{15}000+$/, "It is a number of which a spreadsheet kept the first 15 digits and put zeros for the others."],
];

/**
 * An identifier: text that keeps its leading zeros, in Unicode's composed form (NFC), so that one name typed on two
 * systems is one identifier. Refuses what a spreadsheet has damaged (`csv-identifier-damaged`) and characters that
 * nobody sees (`csv-character`). What spreadsheets do to long numbers: common practice.
 */
export const identifier: CellReader<string> = {
  isIdentifier: true,
  read(text) {
    const damage = damages.find(([form]) => form.test(text));
    if (damage !== undefined) return refuse("csv-identifier-damaged", damage[1]);
    if (plainAscii.test(text)) return text;
    if (unseen.test(text))
      return refuse("csv-character", "It holds a line break or another character that is not seen.");
    return text.normalize("NFC");
  },
};
