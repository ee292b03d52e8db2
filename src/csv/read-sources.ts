import { refuse } from "../../shared/problems.ts";
import type { Reading } from "./column.ts";
import { faultAt, refusedFile } from "./fault.ts";
import { IdentifierWatch } from "./identifier-watch.ts";
import type { CsvItem, CsvNotice } from "./items.ts";
import { type FileLayout, layouts } from "./layout.ts";
import { MidnightWatch } from "./midnight-watch.ts";
import { type OpenBytes, readBlocks } from "./read-blocks.ts";

/** A file by its name, from a folder, an upload or memory. */
export interface NamedBytes {
  /** The name, with or without folders in front of it. */
  readonly name: string;
  readonly open: OpenBytes;
}

/** Names beyond these are only counted: a folder may hold thousands of other files. */
const unknownNamed = 20;
const knownNames = layouts.map(({ name }) => name).join(", ");
const notKnown = `This file is not read: only ${knownNames} are.`;

/**
 * Reads the known files among the sources, always in the order of the layouts, as one stream: lines, what is refused,
 * and notices. Refuses sources of which none is known (`folder-unreadable`).
 */
export async function* readSources(
  sources: readonly NamedBytes[],
  reading: Reading,
): AsyncGenerator<CsvItem, void, undefined> {
  const visible = sources.filter(({ name }) => !lastPart(name).startsWith("."));
  const named = layouts.map((layout) => ({ layout, found: visible.filter((source) => isNamed(source, layout.name)) }));
  if (named.every(({ found }) => found.length === 0)) {
    return refuse("folder-unreadable", `It holds none of the files ${knownNames}.`);
  }
  yield* notRead(visible);
  const watches = [new IdentifierWatch(), new MidnightWatch(reading)];
  for (const { layout, found } of named) {
    const [source, another] = found;
    if (source === undefined) continue;
    if (another !== undefined) yield repeated(layout, found);
    else yield* watched(source, { layout, reading, watches });
  }
  for (const watch of watches) yield* watch.notices();
}

async function* watched(
  source: NamedBytes,
  given: { layout: FileLayout; reading: Reading; watches: readonly (IdentifierWatch | MidnightWatch)[] },
): AsyncGenerator<CsvItem, void, undefined> {
  for await (const items of readBlocks(source.open, given.layout, given.reading)) {
    for (const item of items) {
      if (item.type === "line") for (const watch of given.watches) watch.add(item);
      yield item;
    }
  }
}

function repeated({ name }: FileLayout, found: readonly NamedBytes[]): CsvItem {
  const names = found.map((source) => source.name).join(", ");
  return refusedFile(name, [faultAt({ file: name }, "csv-file-repeated", `There are ${found.length}: ${names}.`)]);
}

function notRead(sources: readonly NamedBytes[]): CsvNotice[] {
  const unknown = sources.filter((source) => !isKnown(source));
  const notices = unknown.slice(0, unknownNamed).map(({ name }) => notice("file-unknown", name, notKnown));
  const more = unknown.length - unknownNamed;
  return more > 0 ? [...notices, notice("file-unknown", null, `${more} more files are not known.`)] : notices;
}

function notice(code: CsvNotice["code"], file: string | null, detail: string): CsvNotice {
  return { type: "notice", code, file, detail };
}

function isKnown(source: NamedBytes): boolean {
  return layouts.some(({ name }) => isNamed(source, name));
}

/** Whether a source has the name of a file that is read, with or without folders in front of it. */
export function isNamed({ name }: Pick<NamedBytes, "name">, known: string): boolean {
  return lastPart(name) === known;
}

function lastPart(name: string): string {
  return (name.split(/[\\/]/).at(-1) ?? name).toLowerCase();
}
