import { text } from "./cells/text.ts";
import type { PlacedColumn } from "./header.ts";

/** Longer texts are no slip of the pen in a time, a number or a word of a list. */
const quotedMost = 40;

/**
 * What a rejected cell says, as a sentence with a space before it; empty where it may speak of a patient: identifiers,
 * free text, the day of birth, and a text that stands in one of those cells of the line too, as when cells were shifted.
 */
export function quotedCell(
  cell: string,
  column: PlacedColumn,
  line: readonly (readonly [PlacedColumn, string])[],
): string {
  const said = cell.trim();
  if (said === "" || said.length > quotedMost || isPersonal(column)) return "";
  const personal = line.filter(([other]) => isPersonal(other)).map(([, value]) => value.trim());
  return personal.some((value) => value !== "" && said.includes(value))
    ? ""
    : ` The cell says ${JSON.stringify(said)}.`;
}

function isPersonal({ name, column: { reader } }: PlacedColumn): boolean {
  return reader.isIdentifier || reader === text || name === "birth_date";
}
