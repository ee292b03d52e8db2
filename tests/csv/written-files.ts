import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import type { CsvItem, CsvLine, CsvNotice, CsvRefused } from "../../src/csv/items.ts";
import { type FileLayout, layouts } from "../../src/csv/layout.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";

/** The zone of the made-up Alder Bay Hospital. */
export const alderBay = { zone: zoneNamed("America/New_York"), settings: defaultSourceSettings };

/** A temporary folder with these files; it is gone when the test is over. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), "dwell-csv-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  return folder;
}

/** The layout of a file that is read. */
export function layoutOf<Name extends FileLayout["name"]>(name: Name): Extract<FileLayout, { name: Name }> {
  const found = layouts.find((layout): layout is Extract<FileLayout, { name: Name }> => layout.name === name);
  if (found === undefined) throw new Error(`there is no layout named ${name}`);
  return found;
}

/** What reading gave, by its type. */
export interface Sorted {
  readonly items: CsvItem[];
  readonly lines: CsvLine[];
  readonly refused: CsvRefused[];
  readonly notices: CsvNotice[];
}

/** Reads to the end and sorts what was read by its type. */
export async function sorted(items: AsyncIterable<CsvItem>): Promise<Sorted> {
  const read: Sorted = { items: [], lines: [], refused: [], notices: [] };
  for await (const item of items) {
    read.items.push(item);
    if (item.type === "line") read.lines.push(item);
    else if (item.type === "refused") read.refused.push(item);
    else if (item.type === "notice") read.notices.push(item);
  }
  return read;
}

/** Every fault as `line N, column C (position P): code`, in order. */
export function places(refused: readonly CsvRefused[]): string[] {
  return refused.flatMap(({ faults }) =>
    faults.map(({ line, column, position, code }) => `line ${line}, column ${column} (${position}): ${code}`),
  );
}

/** Bytes in pieces of a size, as they might come over a network. */
export async function* inPieces(bytes: Uint8Array, pieceBytes = bytes.length): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += pieceBytes) yield bytes.subarray(at, at + pieceBytes);
}
