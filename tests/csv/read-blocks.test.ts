import { createReadStream } from "node:fs";
import { describe, expect, it } from "vitest";
import { refuse } from "../../shared/problems.ts";
import type { CsvItem } from "../../src/csv/items.ts";
import { type OpenBytes, readBlocks } from "../../src/csv/read-blocks.ts";
import { alderBay, folderWith, layoutOf } from "./written-files.ts";

const read = (open: OpenBytes) => readBlocks(open, layoutOf("wards.csv"), alderBay);

async function allOf(open: OpenBytes): Promise<CsvItem[]> {
  const items: CsvItem[] = [];
  for await (const block of read(open)) items.push(...block);
  return items;
}

/** A file that never ends, and how much of it was fetched. */
function endless() {
  const seen = { lines: 0, isClosed: false };
  async function* open(): AsyncGenerator<Uint8Array> {
    try {
      yield Buffer.from("ward,name\n");
      for (;;) {
        yield Buffer.from(`N${seen.lines},North wing of the old building\n`.repeat(100));
        seen.lines += 100;
      }
    } finally {
      seen.isClosed = true;
    }
  }
  return { seen, open };
}

describe("readBlocks", () => {
  it("fetches no more than it hands on, and closes the file when no more is wanted", async () => {
    const { seen, open } = endless();
    let lines = 0;
    for await (const block of read(open)) {
      lines += block.length;
      // One block of text is some 1,800 of these lines.
      expect(seen.lines - lines).toBeLessThan(4_000);
      if (lines > 50_000) break;
    }
    expect(lines).toBeGreaterThan(50_000);
    expect(seen.isClosed).toBe(true);
  });

  it("lets other work have its turn between blocks", async () => {
    let turns = 0;
    let isDone = false;
    const count = () => {
      turns += 1;
      if (!isDone) setImmediate(count);
    };
    setImmediate(count);
    let blocks = 0;
    for await (const _ of read(endless().open)) if (++blocks === 20) break;
    isDone = true;
    expect(turns).toBeGreaterThanOrEqual(19);
  });

  it("stops fetching once nothing more can be read", async () => {
    const { seen, open } = endless();
    const items = await allOf(async function* () {
      yield Buffer.from("wing\n".padEnd(80_000, "\n"));
      yield* open();
    });
    expect(items).toMatchObject([{ wholeFile: true, faults: [{ code: "csv-header-missing" }] }]);
    expect(seen.lines).toBe(0);
  });

  it("refuses a file that the system cannot read", async () => {
    const folder = folderWith({});
    for (const [path, code] of [
      [`${folder}/none.csv`, "ENOENT"],
      [folder, "EISDIR"],
    ] as const) {
      expect(await allOf(() => createReadStream(path))).toMatchObject([
        {
          wholeFile: true,
          file: "wards.csv",
          faults: [{ code: "csv-file-unreadable", detail: expect.stringContaining(code) }],
        },
      ]);
    }
  });

  it("throws on what went wrong where the bytes came from", async () => {
    const bug = new TypeError("a bug");
    const broken = async function* (): AsyncGenerator<Uint8Array> {
      yield Buffer.from("ward\n");
      throw bug;
    };
    await expect(allOf(broken)).rejects.toBe(bug);
    const tooLarge = async function* (): AsyncGenerator<Uint8Array> {
      yield Buffer.from("ward\n");
      refuse("disk-full", "There is no room.");
    };
    await expect(allOf(tooLarge)).rejects.toMatchObject({ code: "disk-full" });
  });
});
