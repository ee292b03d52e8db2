import { problems } from "../../shared/problems.ts";
import type { Store } from "../usecases/act.ts";
import type { ImportResult, PlacedFault } from "../usecases/intake/intake-item.ts";
import { type RefusedLine, refusedLines } from "../usecases/intake/read-refused.ts";

/** Writes every refused line of an import to standard error, by file, line and column, with the remedy. */
export async function printFaults(store: Store, result: ImportResult, err: (text: string) => void): Promise<void> {
  for await (const refused of refusedLines(store, result.importId))
    for (const fault of refused.faults) err(`${faultText(refused, fault)}\n`);
}

function faultText({ file, line }: RefusedLine, fault: PlacedFault): string {
  // A quote that was opened in a later line of the record is told where it stands.
  const at = fault.line ?? line;
  const place = [
    file,
    ...(at === null ? [] : [`line ${at}`]),
    ...(fault.column === null ? [] : [`column ${fault.column}`]),
  ];
  const other = fault.other === undefined ? "" : ` (see ${fault.other})`;
  return `${place.join(", ")}: ${fault.detail}${other} ${fault.remedy ?? problems[fault.code].remedy}`;
}
