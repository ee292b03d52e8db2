import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { ownDatabase } from "../../src/store/database-lock.ts";
import { faultsOf } from "../databases/refusal.ts";

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dwell-own-"));
  file = join(folder, "ledger.sqlite");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A process that owns the file until it is killed, keeps nothing of what it was answered and clears its memory. */
async function ownerProcess(): Promise<{ kill(): Promise<void> }> {
  const code = `const { ownDatabase } = await import(${JSON.stringify(new URL("../../src/store/database-lock.ts", import.meta.url).href)});
    ownDatabase(${JSON.stringify(file)}); gc(); console.log("owned"); setInterval(() => {}, 1000);`;
  const child = spawn(process.execPath, ["--expose-gc", "--import", "tsx", "--input-type=module", "-e", code], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  await new Promise((resolve) => child.stdout.once("data", resolve));
  return {
    kill: () =>
      new Promise((resolve) => {
        child.once("exit", () => resolve());
        child.kill("SIGKILL");
      }),
  };
}

describe("owning a SQLite file", () => {
  it("keeps others out until it is released", async () => {
    const owner = ownDatabase(`file:${file}`);
    const [fault] = await faultsOf(() => ownDatabase(file));
    expect(fault?.code).toBe("database-in-use");
    owner.release();
    ownDatabase(file).release();
  });

  it("ends with the process that owned it, even when that was killed", async () => {
    const owner = await ownerProcess();
    const [fault] = await faultsOf(() => ownDatabase(file));
    expect(fault?.code).toBe("database-in-use");
    await owner.kill();
    ownDatabase(file).release();
  });

  it("is refused by name where the folder cannot be written", async () => {
    // A folder that nobody may write in, not even the administrator.
    const [fault] = await faultsOf(() => ownDatabase("/proc/self/ledger.sqlite"));
    expect(fault?.code).toBe("database-not-writable");
  });
});

describe("owning a PostgreSQL", () => {
  it("is not needed: several processes may use it", () => {
    const owners = [ownDatabase("postgresql://localhost/ledger"), ownDatabase("postgresql://localhost/ledger")];
    for (const owner of owners) owner.release();
  });
});
