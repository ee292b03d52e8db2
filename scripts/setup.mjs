import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { install, isInstalled, noteInstalled } from "./install.mjs";
import { withLock } from "./lock.mjs";
import { areClientsFresh, generateClients } from "./prisma-clients.mjs";
import { Obstacle, root, runScript } from "./project.mjs";

/** The oldest Node the program runs on: package.json says the same under `engines`. */
const oldestNode = [20, 19];

/**
 * Makes a fresh or changed clone ready to run: packages, then the database clients. Does nothing when
 * all is fresh (a few milliseconds). Several at once take turns.
 * @param {{ quiet?: boolean }} [options] quiet: say only what takes long or fails
 * @throws {Obstacle} something on this machine is missing; the message says what
 */
export async function ensureSetup({ quiet = false } = {}) {
  refuseOldNode(process.versions.node);
  if (isInstalled() && areClientsFresh()) return;
  await withLock(join(root, ".setup-lock"), async () => {
    if (!isInstalled()) await install({ quiet });
    if (!areClientsFresh()) await generateClients({ quiet });
  });
}

/**
 * @param {string} version such as 20.19.0
 * @throws {Obstacle} the version is too old
 */
export function refuseOldNode(version) {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  const [oldestMajor = 0, oldestMinor = 0] = oldestNode;
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return;
  throw new Obstacle(`Dwell Ledger needs Node ${oldestNode.join(".")} or newer, and this is Node ${version}.`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  await runScript(async () => {
    if (process.argv.includes("--installed")) noteInstalled();
    else await ensureSetup();
  });
}
