import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { tell } from "./project.mjs";

/** How often a waiting process looks again. */
const lookEveryMs = 200;
/** A lock folder without its owner's number was left by a process that died in between. */
const ownerWrittenWithinMs = 10_000;

/**
 * Runs `body` while no other process holds the same lock folder. A lock whose owner is gone is taken over.
 * @template T
 * @param {string} folder absolute path; its parent must exist
 * @param {() => Promise<T>} body
 * @returns {Promise<T>} what `body` returns
 */
export async function withLock(folder, body) {
  for (let looks = 0; !take(folder); looks++) {
    if (looks === 10) tell("Waiting for another set-up of this project to finish.");
    await wait(lookEveryMs);
  }
  try {
    return await body();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * @param {string} folder
 * @returns {boolean} true when the lock is now ours
 */
function take(folder) {
  try {
    mkdirSync(folder);
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EEXIST") throw error;
    if (isAbandoned(folder)) rmSync(folder, { recursive: true, force: true });
    return false;
  }
  writeFileSync(join(folder, "owner"), String(process.pid));
  return true;
}

/** @param {string} folder */
function isAbandoned(folder) {
  try {
    return !isRunning(Number(readFileSync(join(folder, "owner"), "utf8")));
  } catch {
    const made = statSync(folder, { throwIfNoEntry: false });
    return made !== undefined && Date.now() - made.mtimeMs > ownerWrittenWithinMs;
  }
}

/**
 * True when a process with this number exists, also one of another user.
 * @param {number} pid
 */
export function isRunning(pid) {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === "EPERM";
  }
}
