import { importMost } from "../../../shared/import-words.ts";
import { refuse } from "../../../shared/problems.ts";
import { writeAudit } from "../../store/audit.ts";
import { facility } from "../../store/facilities.ts";
import { addFiles, type SentFile } from "../../store/import-files.ts";
import { addImport } from "../../store/imports.ts";
import { type Act, recording } from "../act.ts";
import { sourceForImport } from "./source-of-import.ts";

/**
 * Puts files down to be read. Nothing of them is looked at before the answer but their size.
 * Refuses `demo-record`: real patients never join the invented ones; `import-too-large`; and `source-unknown`.
 */
export function receiveImport(
  act: Act,
  { files, sourceId }: { files: readonly SentFile[]; sourceId?: number | undefined },
): Promise<{ importId: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    if ((await facility(tx, by.facilityId)).demo)
      refuse("demo-record", "This is the demo hospital, whose patients are fictional.");
    const lines = files.reduce((sum, { text }) => sum + linesIn(text), 0);
    if (lines > importMost.lines)
      refuse("import-too-large", `The files have ${lines} lines, and at most ${importMost.lines} are taken here.`, {
        pointer: "/files",
      });
    const from = await sourceForImport(tx, act, sourceId);
    const how = { setAside: false, assumeInpatient: false } as const;
    const importId = await addImport(tx, by, { ...how, sourceId: from, state: "received" });
    await addFiles(tx, importId, files);
    await writeAudit(tx, by, { action: "receive-files", details: { importId, files: files.length } });
    return { importId };
  });
}

/** Line feeds, or carriage returns where a file has no line feeds. */
function linesIn(text: string): number {
  return Math.max(occurrences(text, "\n"), occurrences(text, "\r")) + 1;
}

function occurrences(text: string, sign: string): number {
  let count = 0;
  for (let at = text.indexOf(sign); at >= 0; at = text.indexOf(sign, at + 1)) count += 1;
  return count;
}
