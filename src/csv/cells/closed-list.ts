import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

/**
 * One word of a closed list, in any case, with spaces or underscores in place of hyphens if need be; or one of `others`,
 * which other systems write for it. Refuses all else, naming the list (`csv-word`).
 */
export function closedList<Word extends string>(
  list: Readonly<Record<Word, unknown>>,
  others: Readonly<Record<string, NoInfer<Word>>> = {},
): CellReader<Word> {
  const own = Object.keys(list) as Word[];
  const words = new Map<string, Word>([...own.map((word) => [word, word] as const), ...Object.entries(others)]);
  const printed = own.join(", ");
  return {
    isIdentifier: false,
    read(text) {
      const word = words.get(text.toLowerCase().replace(/[\s_-]+/g, "-"));
      return word ?? refuse("csv-word", `This is none of: ${printed}.`);
    },
  };
}
