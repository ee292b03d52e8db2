import { existsSync } from "node:fs";
import { delimiter, dirname, join } from "node:path";
import { runChild } from "./child.mjs";
import { Obstacle, root, tell } from "./project.mjs";
import { digestOf, isStamped, writeStamp } from "./stamp.mjs";

/** Lives inside node_modules, so that whoever removes the packages removes the stamp too. */
const stamp = join(root, "node_modules/.dwell-ledger-installed");
/** The one package that is compiled on this machine where no ready-made build can be had. */
const compiled = join(root, "node_modules/better-sqlite3/build/Release/better_sqlite3.node");

/** The compiled package fits one version of Node's binary interface only, hence the further parts. */
function installDigest() {
  return digestOf(["package-lock.json"], `${process.versions.modules} ${process.platform} ${process.arch}`);
}

/** True when node_modules is what package-lock.json asks for, built for this Node. */
export function isInstalled() {
  return isStamped(stamp, installDigest());
}

/**
 * Notes that npm has just installed what package-lock.json asks for. npm's `postinstall` calls this,
 * so that packages installed by hand are not installed again. An install without the development packages
 * or without the compiled one is not noted: set-up would need the rest.
 */
export function noteInstalled() {
  const complete = existsSync(compiled) && existsSync(join(root, "node_modules/prisma"));
  if (complete) writeStamp(stamp, installDigest());
  return complete;
}

/**
 * Runs `npm ci`.
 * @param {{ quiet: boolean }} options quiet: npm's own output is shown only when it fails
 * @throws {Obstacle} npm failed; the sentence names what is missing on this machine
 */
export async function install({ quiet }) {
  tell("Installing the packages with npm ci. The first time takes a few minutes: better-sqlite3 is compiled.");
  const args = ["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"];
  const { code, output } = await runChild("npm", args, { env: installEnvironment(), show: !quiet });
  if (code === 0 && noteInstalled()) return;
  if (quiet) tell(output.trimEnd());
  throw new Obstacle(installObstacle({ code, output, missing: missingTools() }));
}

/**
 * Points node-gyp to the header files beside this Node, if they are there: it would download them otherwise. It compiles
 * on as many cores as there are.
 */
function installEnvironment() {
  /** @type {NodeJS.ProcessEnv} */
  const env = { JOBS: "max", ...process.env };
  const prefix = dirname(dirname(process.execPath));
  if (env.npm_config_nodedir || !existsSync(join(prefix, "include/node/node_version.h"))) return env;
  return { ...env, npm_config_nodedir: prefix };
}

/** @returns {string[]} what is needed to compile better-sqlite3 and is not on the PATH */
function missingTools() {
  const folders = (process.env.PATH ?? "").split(delimiter);
  return ["g++", "make", "python3"].filter((tool) => !folders.some((folder) => existsSync(join(folder, tool))));
}

/**
 * The one sentence for a failed install.
 * @param {{ code: number, output: string, missing: readonly string[] }} failure
 */
export function installObstacle({ code, output, missing }) {
  if (/gyp/i.test(output) && missing.length > 0) {
    return `better-sqlite3 has to be compiled here, and this machine lacks ${missing.join(", ")}: on Debian or Ubuntu run "apt-get install -y g++ make python3", then try again.`;
  }
  if (/gyp/i.test(output) && /ENOTFOUND|ECONNREFUSED|ETIMEDOUT|EAI_AGAIN|node_version\.h|node\.h/.test(output)) {
    return `better-sqlite3 has to be compiled here and Node's header files could not be had: set npm_config_nodedir to the folder that holds include/node of Node ${process.versions.node}, then try again.`;
  }
  if (code === 0) {
    return "npm ci did not build better-sqlite3: npm is set to ignore install scripts. Allow them (npm config set ignore-scripts false), then try again.";
  }
  return `npm ci failed with exit code ${code}; what npm said stands above. Mend it, then try again.`;
}
