import { spawn } from "node:child_process";
import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { freshSqlite } from "../databases/databases.ts";
import { hasLoopDevices, mountImageDisk } from "./image-disk.ts";

const cuts = Number(process.env.CUTS ?? 2);
const writer = fileURLToPath(new URL("./power-writer.ts", import.meta.url));

/** How many writes were acknowledged before the power was cut, and how many are there afterwards. */
async function cutPower(mode: "FULL" | "NORMAL", afterWrites: number): Promise<{ told: number; kept: number }> {
  const disk = mountImageDisk();
  if (!disk) throw new Error("no disk can be mounted here");
  const template = await freshSqlite();
  const file = join(disk.folder, "ledger.sqlite");
  copyFileSync(template.url, file);
  await template.drop();
  const child = spawn(process.execPath, ["--import", "tsx", writer, file, mode], { stdio: ["ignore", "pipe", "pipe"] });
  let told = 0;
  child.stdout.on("data", (chunk: Buffer) => {
    told = Number(chunk.toString().trimEnd().split("\n").at(-1));
  });
  const closed = new Promise((resolve) => child.once("close", resolve));
  try {
    await expect.poll(() => told, { timeout: 60_000, interval: 2 }).toBeGreaterThan(afterWrites);
    // The writer stands still while the disk is copied, as it would when the power fails.
    child.kill("SIGSTOP");
    const copy = disk.cut();
    try {
      const database = new Database(join(copy.folder, "ledger.sqlite"));
      expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
      const kept = database
        .prepare("SELECT count(*) FROM id_block WHERE name LIKE 'written-%'")
        .pluck()
        .get() as number;
      database.close();
      return { told, kept };
    } finally {
      copy.remove();
    }
  } finally {
    child.kill("SIGKILL");
    await closed;
    disk.remove();
  }
}

describe(`a power cut on SQLite, CUTS=${cuts}${hasLoopDevices ? "" : ", and no loop device here to cut one from"}`, () => {
  it(
    "loses nothing that was acknowledged",
    async () => {
      // Where no disk of our own can be mounted, only the setting on which it rests is looked at, by the adapter's test.
      if (!hasLoopDevices) return expect(hasLoopDevices).toBe(false);
      for (let cut = 0; cut < cuts; cut++) {
        const { told, kept } = await cutPower("FULL", 20 + cut * 7);
        expect(kept).toBeGreaterThanOrEqual(told);
      }
    },
    cuts * 60_000,
  );

  it("would lose some if commits were not forced to disk", async () => {
    if (!hasLoopDevices) return expect(hasLoopDevices).toBe(false);
    const { told, kept } = await cutPower("NORMAL", 50);
    expect(kept).toBeLessThan(told);
  }, 60_000);
});
