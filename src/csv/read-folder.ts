import { createReadStream } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { refuse } from "../../shared/problems.ts";
import type { Reading } from "./column.ts";
import type { CsvItem } from "./items.ts";
import { readSources } from "./read-sources.ts";

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "does not exist",
  ENOTDIR: "is not a folder",
  EACCES: "may not be read by the user that runs this program",
  EPERM: "may not be read by the user that runs this program",
};

/**
 * Reads the known files of a folder as one stream, like `readSources`. Refuses a folder that is missing, empty or
 * unreadable, or that holds no known file (`folder-unreadable`).
 */
export async function* readFolder(folder: string, reading: Reading): AsyncGenerator<CsvItem, void, undefined> {
  const names = await namesIn(folder);
  if (names.length === 0) return refuse("folder-unreadable", `The folder ${folder} is empty.`);
  // In the order of the alphabet, so that notices do not depend on the file system.
  const sources = names.sort().map((name) => ({ name, open: () => createReadStream(join(folder, name)) }));
  yield* readSources(sources, reading);
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (code === "") throw error;
    return refuse("folder-unreadable", `The folder ${folder} ${reasons[code] ?? `cannot be read (${code})`}.`);
  }
}
