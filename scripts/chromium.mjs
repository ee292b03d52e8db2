import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { runChild } from "./child.mjs";
import { Obstacle, tell } from "./project.mjs";

const names = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome"];

/**
 * The browser for the browser tests: CHROMIUM_PATH, else the first one on the PATH or in /usr/bin.
 * On Debian, with the right to do so, a missing one is installed.
 * @returns {Promise<string>} absolute path of the program
 * @throws {Obstacle} there is none and it cannot be installed here; the message says what to do
 */
export async function ensureChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (existsSync(named)) return named;
    throw new Obstacle(`CHROMIUM_PATH names ${named}, and there is no such file: correct it, or unset it.`);
  }
  const found = findChromium();
  if (found) return found;
  if (process.getuid?.() !== 0 || !existsSync("/etc/debian_version")) throw new Obstacle(adviceWithoutChromium);
  tell("Installing chromium with apt-get, for the browser tests.");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  await runChild("apt-get", ["update"], { env });
  const { output } = await runChild("apt-get", ["install", "-y", "--no-install-recommends", "chromium"], { env });
  const installed = findChromium();
  if (installed) return installed;
  tell(output.trimEnd());
  throw new Obstacle(adviceWithoutChromium);
}

const adviceWithoutChromium =
  'The browser tests need Chromium: on Debian run "apt-get install -y chromium" as root; elsewhere install Chromium or Chrome and set CHROMIUM_PATH to its program.';

function findChromium() {
  const folders = [...(process.env.PATH ?? "").split(delimiter), "/usr/bin"];
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
}
