import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

const answers: ReadonlyMap<string, boolean> = new Map([
  ["yes", true],
  ["y", true],
  ["true", true],
  ["1", true],
  ["no", false],
  ["n", false],
  ["false", false],
  ["0", false],
]);

/** Yes or no in any case, also as databases write it: y, true, 1; n, false, 0. Refuses all else (`csv-word`). */
export const yesNo: CellReader<boolean> = {
  isIdentifier: false,
  read(text) {
    return answers.get(text.toLowerCase()) ?? refuse("csv-word", "This is neither yes nor no.");
  },
};
