import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { runChild } from "./child.mjs";
import { withLock } from "./lock.mjs";
import { Obstacle, root, runScript, tell } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";
import { digestOf, isStamped, writeStamp } from "./stamp.mjs";

const stamp = join(root, "dist/web.stamp");
const webFolder = join(root, "dist/web");
/** Everything the page is made of. */
const sources = ["src/web", "src/charts", "shared", "vite.config.ts", "package-lock.json", "scripts/build-web.mjs"];

function isBuilt() {
  return existsSync(join(root, "dist/web/index.html")) && isStamped(stamp, digestOf(sources));
}

/**
 * Builds the web page into dist/web when anything it is made of has changed. Needs {@link ensureSetup} first.
 * @throws {Obstacle} vite refuses the sources; its own message is shown above the sentence
 */
export async function ensureWebBuilt() {
  if (isBuilt()) return;
  await withLock(join(root, ".setup-lock"), async () => {
    if (isBuilt()) return;
    tell("Building the web page.");
    const digest = digestOf(sources);
    const args = [join(root, "node_modules/vite/bin/vite.js"), "build", "--logLevel", "warn"];
    // Under another NODE_ENV, as in a test run, the page would be built with the slow checks of development.
    const env = { ...process.env, NODE_ENV: "production" };
    const { code } = await runChild(process.execPath, args, { env, show: true });
    if (code !== 0) throw new Obstacle("vite build failed; what it said stands above.");
    compressWeb();
    writeStamp(stamp, digest);
  });
}

/** Lays a smaller twin beside every file of the page that has one: the service sends it instead. */
function compressWeb() {
  for (const name of readdirSync(webFolder, { recursive: true, encoding: "utf8" })) {
    const file = join(webFolder, name);
    if (!/\.(js|css|html|svg)$/.test(name)) continue;
    const bytes = readFileSync(file);
    writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }));
    writeFileSync(`${file}.br`, brotliCompressSync(bytes));
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  await runScript(async () => {
    await ensureSetup();
    await ensureWebBuilt();
  });
}
