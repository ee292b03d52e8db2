import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { isRunning, withLock } from "../../scripts/lock.mjs";
import { tempFolder } from "./temp-folder.ts";

/** The number of a process that has ended. */
function endedPid(): number {
  return spawnSync(process.execPath, ["-e", ""]).pid;
}

function lockPath(): string {
  return join(tempFolder(), "lock");
}

describe("the set-up lock", () => {
  it("lets one body run at a time", async () => {
    const folder = lockPath();
    const steps: string[] = [];
    const body = (name: string) => async () => {
      steps.push(`${name} begins`);
      await wait(30);
      steps.push(`${name} ends`);
    };
    await Promise.all([withLock(folder, body("first")), withLock(folder, body("second"))]);
    expect(steps).toEqual(["first begins", "first ends", "second begins", "second ends"]);
    expect(existsSync(folder)).toBe(false);
  });

  it("is given back when the body fails", async () => {
    const folder = lockPath();
    await expect(withLock(folder, () => Promise.reject(new Error("no network")))).rejects.toThrow("no network");
    expect(existsSync(folder)).toBe(false);
  });

  it("is taken over from an owner that is gone", async () => {
    const folder = lockPath();
    mkdirSync(folder);
    writeFileSync(join(folder, "owner"), String(endedPid()));
    expect(await withLock(folder, async () => "ours")).toBe("ours");
  });

  it("is taken over when its owner died before writing its number", async () => {
    const folder = lockPath();
    mkdirSync(folder);
    utimesSync(folder, new Date(0), new Date(0));
    expect(await withLock(folder, async () => "ours")).toBe("ours");
  });

  it("tells a running process from one that has ended", () => {
    expect(isRunning(process.pid)).toBe(true);
    expect(isRunning(endedPid())).toBe(false);
    expect(isRunning(Number.NaN)).toBe(false);
  });
});
