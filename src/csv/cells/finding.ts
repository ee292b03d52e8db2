import { type SignFinding, signFindings } from "../../../shared/culture-words.ts";
import type { CellReader } from "../column.ts";
import { closedList } from "./closed-list.ts";

type Word = "yes" | "y" | "no" | "n" | SignFinding;

const meanings: Readonly<Record<Word, SignFinding>> = {
  ...{ yes: "present", y: "present", no: "absent", n: "absent" },
  ...{ present: "present", absent: "absent" },
  ...{ "not-documented": "not-documented", "not-recorded": "not-recorded" },
};
const words = closedList<Word>({ yes: "", no: "", ...signFindings, y: "", n: "" });

/** What was found of a sign: yes or no, or a word of the record's own list. Refuses all else (`csv-word`). */
export const finding: CellReader<SignFinding> = {
  isIdentifier: false,
  read: (text, context) => meanings[words.read(text, context)],
};
