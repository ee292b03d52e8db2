import { existsSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { withLock } from "./lock.mjs";
import { root } from "./project.mjs";
import { digestOf, isStamped, writeStamp } from "./stamp.mjs";

const stamp = join(root, "dist/program.stamp");
const sources = ["src", "shared", "package-lock.json", "scripts/build-program.mjs"];

/** The program of the threads for heavy work, built beside {@link program}. */
export const heavyProgram = join(root, "dist/program/heavy.mjs");

/** src/main.ts and all that it imports as JavaScript: it starts in a third of the time. */
export const program = join(root, "dist/program/main.mjs");

/** @type {import("vite").Plugin} keeps a file's own address, by which the source finds other files */
const ownAddresses = {
  name: "own-addresses",
  transform: (code, id) => {
    if (!id.startsWith(join(root, "src")) || id.includes("/generated/")) return undefined;
    return { code: code.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(id).href)), map: null };
  },
};

function isBuilt() {
  return existsSync(program) && isStamped(stamp, digestOf(sources));
}

/** Makes {@link program} when anything of it has changed. */
export async function ensureProgramBuilt() {
  if (isBuilt()) return;
  await withLock(join(root, ".setup-lock"), async () => {
    if (isBuilt()) return;
    const digest = digestOf(sources);
    // Loaded here: set-up installs it first.
    const { build } = await import("vite");
    await build({
      root,
      configFile: false,
      logLevel: "warn",
      plugins: [ownAddresses],
      build: {
        ssr: true,
        outDir: "dist/program",
        target: "node20",
        sourcemap: true,
        rolldownOptions: {
          input: { main: "src/main.ts", heavy: "src/heavy.ts" },
          output: { entryFileNames: "[name].mjs" },
        },
      },
    });
    writeStamp(stamp, digest);
  });
}
