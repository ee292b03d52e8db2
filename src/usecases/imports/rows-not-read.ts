import type { StagedLine } from "../../store/import-lines.ts";
import type { BlankRow, UnreadLine } from "./intake-item.ts";

/** It is kept so that the rows of a file add up. */
export function blankRow({ file, line }: BlankRow): StagedLine {
  const nothing = { groupKey: "", fingerprint: "", entryKey: "", content: null, faults: null, about: null };
  return { file, line, state: "blank", ...nothing };
}

/** A fault of the whole file stands at line 0; its faults say where it broke off. */
export function refusedLine(item: UnreadLine): StagedLine {
  const line = item.wholeFile ? 0 : (item.line ?? 0);
  return {
    file: item.file,
    line,
    state: "refused",
    groupKey: "",
    fingerprint: "",
    entryKey: "",
    content: item.raw,
    faults: JSON.stringify(item.faults),
    about: item.about,
  };
}
