import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

/**
 * One word of a closed list, in any case, with spaces or underscores in place of hyphens if need be.
 * Refuses all else, naming the list (`csv-word`).
 */
export function closedList<Word extends string>(list: Readonly<Record<Word, unknown>>): CellReader<Word> {
  const words = new Map(Object.keys(list).map((word) => [word, word as Word]));
  const printed = [...words.keys()].join(", ");
  return {
    isIdentifier: false,
    read(text) {
      const word = words.get(text.toLowerCase().replace(/[\s_-]+/g, "-"));
      return word ?? refuse("csv-word", `This is none of: ${printed}.`);
    },
  };
}
