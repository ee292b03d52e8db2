import { refuse } from "../../shared/problems.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import type { ReadFiles } from "../usecases/imports/work-on-imports.ts";
import { itemsAndNotices } from "./intake-items.ts";
import type { CsvNotice } from "./items.ts";
import { type FileLayout, layouts } from "./layout.ts";
import { isNamed, readSources } from "./read-sources.ts";
import { scanRow } from "./scan-row.ts";
import { startOf } from "./start.ts";

/** Others get their turn between two pieces of a file. */
const pieceBytes = 64 * 1024;
/** The mark of UTF-8, which some programs put in front of a text. */
const byteOrderMark = /^\uFEFF/;

/** The layout of a file by its name; undefined for a file that is not read. */
export function layoutNamed(name: string): FileLayout | undefined {
  return layouts.find((layout) => isNamed({ name }, layout.name));
}

/** Refuses files of which none has a known name: `files-unknown`. Their names are not repeated. */
export function refuseUnknownFiles(files: readonly { readonly name: string }[]): void {
  if (files.some(({ name }) => layoutNamed(name))) return;
  const known = layouts.map(({ name }) => name).join(", ");
  refuse("files-unknown", `Only files with these names are read: ${known}.`, { pointer: "/files" });
}

/** Reads files that came as texts, like a folder of them. */
export const readSentFiles: ReadFiles = (files, { zone, settings }) => {
  const notices: CsvNotice[] = [];
  const sources = files.map(({ name, text }) => ({ name, open: () => piecesOf(text) }));
  return {
    items: itemsAndNotices(readSources(sources, { zone: zoneNamed(zone), settings }), (notice) => notices.push(notice)),
    notices,
    headers: files.map(({ name, text }) => headerOf(text, layoutNamed(name))),
  };
};

async function* piecesOf(text: string): AsyncIterable<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += pieceBytes) yield bytes.subarray(at, at + pieceBytes);
}

/** The header line as it stands in a file; null where there is none. */
function headerOf(text: string, layout: FileLayout | undefined): string | null {
  if (layout === undefined) return null;
  const plain = text.replace(byteOrderMark, "");
  const { skipped, delimiter, line } = startOf(plain, layout);
  if (skipped >= plain.length) return null;
  return scanRow({ text: plain, start: skipped, line, delimiter, isLast: true })?.row.raw ?? null;
}
