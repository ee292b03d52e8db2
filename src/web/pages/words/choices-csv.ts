import type { chooseLaboratoryWords } from "../../../../shared/api/laboratory-words.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";

type Words = InputOf<typeof chooseLaboratoryWords>["words"];
const header = ["column", "wording", "choice"];

/** Choices as CSV with a header line (RFC 4180). A cell that a spreadsheet would take for a formula gets an apostrophe. */
export function choicesCsv(
  words: readonly { readonly column: string; readonly wording: string; readonly choice: string | null }[],
): string {
  const rows = words.map(({ column, wording, choice }) => [column, wording, choice ?? ""]);
  return [header, ...rows].map((row) => `${row.map(cellText).join(",")}\r\n`).join("");
}

function cellText(value: string): string {
  const safe = /^[=+\-@\t\r＝]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The choices of such a text; rows without a choice are left out. A column that is not known goes to the server as it is. */
export function choicesOf(csv: string): Words {
  return rowsOf(csv)
    .filter((row, i) => row.some((cell) => cell !== "") && !(i === 0 && row[0] === "column"))
    .flatMap(([column = "", wording = "", choice = ""]) =>
      choice === ""
        ? []
        : [{ column: column as Words[number]["column"], wording: wording.replace(/^'(?=[=+\-@])/, ""), choice }],
    );
}

function rowsOf(csv: string): string[][] {
  return [...csv.replace(/^\uFEFF/, "").matchAll(/(?:"(?:[^"]|"")*"|[^"\r\n])+/g)].map(([line]) =>
    [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain = ""]) =>
      (quoted === undefined ? plain : quoted.replaceAll('""', '"')).trim(),
    ),
  );
}
