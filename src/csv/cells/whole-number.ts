import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

/** A whole number in digits from `least` to `most`. Refuses all else (`csv-number`). */
export function wholeNumber({ least, most }: { least: number; most: number }): CellReader<number> {
  return {
    isIdentifier: false,
    read(text) {
      if (!/^[+-]?\d+$/.test(text)) return refuse("csv-number", "This is not a whole number written in digits alone.");
      const number = Number(text);
      if (number < least || number > most) {
        return refuse("csv-number", `The number is not between ${least} and ${most}.`);
      }
      // Minus zero would be a zero that is not equal to the others in every comparison.
      return number === 0 ? 0 : number;
    },
  };
}
