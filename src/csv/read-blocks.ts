import { setImmediate as nextTurn } from "node:timers/promises";
import { Problem } from "../../shared/problems.ts";
import type { Layout, Reading } from "./column.ts";
import { decodeBlocks } from "./decode.ts";
import { faultAt, faultsOf, refusedFile } from "./fault.ts";
import { FileReader } from "./file-reader.ts";
import type { CsvItem } from "./items.ts";

/** The bytes of a file; opened when it is its turn. */
export type OpenBytes = () => AsyncIterable<Uint8Array>;

/**
 * Reads a file of a layout. Gives what each block of it holds as one list; between blocks other work gets its turn.
 * A file that is no text, or that the system cannot read, is refused as a whole; everything else that goes wrong while
 * the bytes are fetched is thrown on.
 */
export async function* readBlocks(
  open: OpenBytes,
  layout: Layout,
  reading: Reading,
): AsyncGenerator<CsvItem[], void, undefined> {
  const reader = new FileReader(layout, reading);
  try {
    for await (const block of decodeBlocks(open())) {
      yield reader.take(block);
      if (reader.isStopped) return;
      await nextTurn();
    }
  } catch (error) {
    yield [refusedFile(layout.name, unreadable(layout.name, error))];
    return;
  }
  yield reader.end();
}

function unreadable(file: string, error: unknown): ReturnType<typeof faultsOf> {
  if (error instanceof Problem && error.code === "csv-not-text") return faultsOf({ file }, error);
  if (!isSystemError(error)) throw error;
  return [faultAt({ file }, "csv-file-unreadable", `The system refused to read it (${error.code}).`)];
}

/** True for an error of the operating system, such as a missing permission. */
function isSystemError(error: unknown): error is Error & { code: string } {
  return error instanceof Error && "syscall" in error && "code" in error && typeof error.code === "string";
}
