import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { root } from "./project.mjs";

/**
 * A digest over files, with their names, and over further text. Folders count with all that is in them.
 * @param {readonly string[]} paths files or folders, relative to the project
 * @param {string} [more] anything else the result depends on, such as a version
 * @returns {string} SHA-256 in hexadecimal
 */
export function digestOf(paths, more = "") {
  const hash = createHash("sha256").update(more);
  for (const path of paths.flatMap((entry) => filesUnder(join(root, entry)))) {
    hash.update(`\0${relative(root, path)}\0`).update(readFileSync(path));
  }
  return hash.digest("hex");
}

/**
 * True when the stamp holds this digest: what was made from the files then is still right.
 * @param {string} stamp absolute path of the stamp file
 * @param {string} digest
 */
export function isStamped(stamp, digest) {
  return existsSync(stamp) && readFileSync(stamp, "utf8") === digest;
}

/**
 * Writes the digest into the stamp file. Call it last, when everything is made.
 * @param {string} stamp absolute path of the stamp file
 * @param {string} digest
 */
export function writeStamp(stamp, digest) {
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, digest);
}

/**
 * @param {string} path
 * @returns {string[]} the file itself, or all files under the folder, in name order
 */
function filesUnder(path) {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}
