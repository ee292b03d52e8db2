import { refuse } from "../../../shared/problems.ts";

const charactersMost = 200;
/** Stands for bytes that are no character; it is also what an earlier careless conversion leaves behind. */
const replacement = "\uFFFD";

/**
 * The text of a cell without white space around it, once it is known to be readable and not too long.
 * Refuses what could not be decoded (`csv-not-utf8`) and more than 200 characters (`csv-cell-too-long`).
 */
export function readableText(cell: string): string {
  const text = cell.trim();
  const lost = cell.indexOf(replacement);
  if (lost >= 0) {
    const at = [...cell.slice(0, lost)].length + 1;
    return refuse("csv-not-utf8", `Character ${at} of the cell is not UTF-8, or was lost before.`);
  }
  if (text.length > charactersMost && [...text].length > charactersMost) {
    return refuse("csv-cell-too-long", `The text has more than ${charactersMost} characters.`);
  }
  return text;
}
