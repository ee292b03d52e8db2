import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { migrate } from "../../src/store/migrate.ts";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import { faultsOf } from "../databases/refusal.ts";
import { canMount, howFull, mountSmallDisk, type SmallDisk } from "../databases/small-disk.ts";

let disk: SmallDisk | null;
let folder: string;
let store: Store;

beforeEach(async () => {
  disk = mountSmallDisk(2048);
  folder = disk?.folder ?? mkdtempSync(join(tmpdir(), "dwell-full-"));
  const file = join(folder, "ledger.sqlite");
  await migrate(file);
  store = openStore(file);
  if (canMount) writeFileSync(join(folder, "ballast"), Buffer.alloc(1_000_000));
  else await store.tx((tx) => tx.db.$queryRawUnsafe("PRAGMA max_page_count = 100"));
});
afterEach(async () => {
  await store.close();
  disk?.remove();
  rmSync(folder, { recursive: true, force: true });
});

async function makeRoom(): Promise<void> {
  if (canMount) rmSync(join(folder, "ballast"));
  else await store.tx((tx) => tx.db.$queryRawUnsafe("PRAGMA max_page_count = 100000"));
}

function names(): Promise<string[]> {
  return store.read(async (read) => {
    const rows = await read.db.idBlock.findMany({ orderBy: { next: "asc" } });
    return rows.map((row) => row.name.slice(0, 2)).filter((name) => name !== "en");
  });
}

/** A transaction of a small row and a large one. */
function put(name: string, size: number): Promise<void> {
  return store.tx(async (tx) => {
    await tx.db.idBlock.create({ data: { name: `${name} small`, next: Number(name) } });
    await tx.db.idBlock.create({ data: { name: `${name} ${"x".repeat(size)}`, next: Number(name) } });
  });
}

describe(`a full disk (${howFull})`, () => {
  it("is told by name; what was stored stays, of the rest nothing, and later there is room again", async () => {
    await put("10", 1000);
    for (let tries = 0; tries < 2; tries++) {
      const [fault, ...more] = await faultsOf(() => put("11", 3_000_000));
      expect(fault?.code).toBe("disk-full");
      expect(more).toEqual([]);
      expect(await names()).toEqual(["10", "10"]);
    }
    await makeRoom();
    await put("12", 300_000);
    expect(await names()).toEqual(["10", "10", "12", "12"]);
    const check = await store.read((read) => read.db.$queryRawUnsafe("PRAGMA integrity_check"));
    expect(check).toEqual([{ integrity_check: "ok" }]);
  });

  it("met at the very commit leaves the transaction undone as well", async () => {
    const stored: string[] = [];
    for (let n = 10; n < 99; n++) {
      const error = await put(String(n), 40_000).then(
        () => null,
        (e: unknown) => e,
      );
      if (error) {
        expect(error).toMatchObject({ code: "disk-full" });
        expect(await names()).toEqual(stored);
        return;
      }
      stored.push(String(n), String(n));
    }
    throw new Error("the disk never filled");
  });
});
