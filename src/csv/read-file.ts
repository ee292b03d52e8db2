import { createReadStream } from "node:fs";
import type { Reading } from "./column.ts";
import type { CsvItem } from "./items.ts";
import type { FileLayout } from "./layout.ts";
import { readBlocks } from "./read-blocks.ts";

/**
 * Reads one file by its layout, whatever its name: its lines and what is refused, in the file's order, and a notice
 * when it has a header alone. Memory does not grow with the file.
 */
export async function* readCsvFile(
  path: string,
  layout: FileLayout,
  reading: Reading,
): AsyncGenerator<CsvItem, void, undefined> {
  for await (const items of readBlocks(() => createReadStream(path), layout, reading)) yield* items;
}
