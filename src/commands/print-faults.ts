import { problems } from "../../shared/problems.ts";
import { lineMarks, markColumn } from "../domain/intake/outcome.ts";
import type { Store } from "../usecases/act.ts";
import type { ImportResult } from "../usecases/imports/intake-item.ts";
import { markedLines, refusedLines } from "../usecases/imports/read-refused.ts";

/**
 * Writes every rejected line of an import to standard error, by file, line and column, with the remedy; then every marked
 * line with the reason, and how the rows of each file add up.
 */
export async function printFaults(store: Store, result: ImportResult, err: (text: string) => void): Promise<void> {
  for await (const { file, line, faults } of refusedLines(store, result.importId))
    for (const fault of faults) {
      // A quote that was opened in a later line of the record is told where it stands.
      const place = placeText({ file, line: fault.line ?? line, column: fault.column });
      const other = fault.other === undefined ? "" : ` (see ${fault.other})`;
      err(`${place}: ${fault.detail}${other} ${fault.remedy ?? problems[fault.code].remedy}\n`);
    }
  for await (const { file, line, marks } of markedLines(store, result.importId))
    for (const mark of marks)
      err(`${placeText({ file, line, column: markColumn(file, mark) })}: accepted and marked: ${lineMarks[mark]}.\n`);
  for (const { file, accepted, rejected, blank } of result.files)
    err(
      `${file}, rows read: ${accepted + rejected + blank} = ${accepted} accepted + ${rejected} rejected + ${blank} blank.\n`,
    );
}

function placeText({ file, line, column }: { file: string; line: number | null; column: string | null }): string {
  return [file, ...(line === null ? [] : [`line ${line}`]), ...(column === null ? [] : [`column ${column}`])].join(
    ", ",
  );
}
