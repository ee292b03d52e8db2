import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ensureProgramBuilt, program } from "../scripts/build-program.mjs";
import { root } from "../scripts/project.mjs";

const place = mkdtempSync(join(tmpdir(), "dwell-documents-"));
afterAll(() => rmSync(place, { recursive: true, force: true }));

/** The text of a document, and the blocks of commands in it. */
function documentOf(path: string): { text: string; blocks: string[] } {
  const text = readFileSync(join(root, path), "utf8");
  return { text, blocks: [...text.matchAll(/^```sh\n([\s\S]*?)^```$/gm)].map(([, block = ""]) => block) };
}

const documents = ["README.md", ...readdirSync(join(root, "docs")).filter((name) => name.endsWith(".md"))];
const readme = documentOf("README.md");
const operating = documentOf("docs/operating.md");
const api = documentOf("docs/api.md");

/** The example files of README.md, as a folder. */
function exampleFolder(): string {
  const folder = join(place, "files");
  mkdirSync(folder, { recursive: true });
  const files = [...readme.text.matchAll(/^`([a-z-]+\.csv)`\n\n```\n([\s\S]*?)^```$/gm)];
  expect(files.map(([, name]) => name)).toEqual(["moves.csv", "catheters.csv"]);
  for (const [, name = "", text = ""] of files) writeFileSync(join(folder, name), text);
  return folder;
}

/**
 * What a shell does before the commands of a document. `npm start` runs until its page has answered; with `keep` it runs to
 * the end. `npm test` runs one file, because the whole suite is what runs this test. With `built`, a script of the program
 * starts the built file with the same words, in a third of the time. curl ends in a failure when it is refused.
 */
const prelude = `
set -euo pipefail
SERVER=""
stop() { if [ -n "$SERVER" ]; then kill -TERM -- "-$SERVER" || true; wait "$SERVER" || true; SERVER=""; fi; }
trap stop EXIT
curl() { command curl --fail --silent --show-error "$@"; }
npm() {
  if [ "$1" = start ]; then serve "$@"
  elif [ "$1" = test ]; then command npm test -- tests/shared/vocabulary.test.ts
  elif [ -z "$BUILT" ]; then command npm "$@"
  else built "$@"
  fi
}
built() {
  if [ "$1" = start ]; then exec node "$BUILT" serve; fi
  local script=$3
  shift 3
  if [ "\${1:-}" = -- ]; then shift; fi
  node "$BUILT" "$script" "$@"
}
serve() {
  set -m
  if [ -n "$BUILT" ]; then built "$@" >"$PLACE/served" 2>&1 & else command npm "$@" >"$PLACE/served" 2>&1 & fi
  SERVER=$!
  set +m
  until grep -q 'is at http' "$PLACE/served"; do kill -0 "$SERVER"; sleep 0.2; done
  curl "http://127.0.0.1:$DWELL_PORT/" >"$PLACE/page"
  if [ -z "$KEEP" ]; then stop; fi
}
`;
const mark = "---- next block ----";

/** Runs blocks in one shell, in the project's folder; resolves to what each printed. Fails where a command fails. */
async function run(blocks: readonly string[], { keep, built }: { keep: boolean; built: boolean }): Promise<string[]> {
  const port = await freePort();
  const commands = blocks
    .join(`echo '${mark}'\n`)
    .replaceAll("8460", String(port))
    .replaceAll(/\bFOLDER\b/g, exampleFolder())
    .replaceAll(/\bBACKUP\b/g, join(place, "backup"))
    .replaceAll(/(?<=file:| )data\//g, `${place}/`);
  const { PATH, HOME, TEST_POSTGRES_URL, CHROMIUM_PATH } = process.env;
  const settings = {
    ...{ PATH, HOME, TEST_POSTGRES_URL, CHROMIUM_PATH, TMPDIR: place, PLACE: place },
    ...{ KEEP: keep ? "yes" : "", BUILT: built ? program : "" },
    ...{
      DWELL_PORT: String(port),
      DWELL_LOG_LEVEL: "silent",
      DWELL_DATABASE_URL: `file:${join(place, "demo.sqlite")}`,
    },
  };
  const env = Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== undefined));
  const child = spawn("bash", ["-c", `${prelude}${commands}`], { cwd: root, env, stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  let err = "";
  child.stdout.on("data", (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk.toString();
  });
  const code = await new Promise((resolve) => child.once("close", resolve));
  expect({ code, err: code === 0 ? "" : err }).toEqual({ code: 0, err: "" });
  return out.split(`${mark}\n`);
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}

beforeAll(ensureProgramBuilt, 120_000);

describe("the commands of the documents", () => {
  it("are in documents that are run here", () => {
    const withCommands = documents.map((name) => (name === "README.md" ? name : `docs/${name}`));
    expect(withCommands.filter((path) => documentOf(path).blocks.length > 0)).toEqual([
      ...["README.md", "docs/api.md", "docs/operating.md"],
    ]);
  });

  it("of README.md and docs/api.md run on the demo, and the report prints what README.md shows", async () => {
    const outputs = await run([...readme.blocks, ...api.blocks], { keep: true, built: false });
    const shown = /^```sh\nnpm run -s report[\s\S]*?^```\n\n```\n([\s\S]*?)^```$/m.exec(readme.text)?.[1];
    expect(outputs[1]?.replaceAll(/ +$/gm, "")).toContain(shown?.trimEnd());
    const answer = /^```json\n([\s\S]*?)\n```$/m.exec(api.text)?.[1];
    expect(outputs[readme.blocks.length]).toContain(answer);
    expect(outputs.slice(readme.blocks.length).filter((text) => text.trim() === "")).toEqual([]);
  }, 400_000);

  it("of docs/operating.md are scripts that start the program with their name", () => {
    const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    const named = operating.blocks.flatMap((block) => [...block.matchAll(/^(?:[^#\n]*?)npm run -s ([a-z]+)/gm)]);
    expect(named.length).toBeGreaterThan(10);
    for (const [, name = ""] of named) expect(scripts).toMatchObject({ [name]: `exec node scripts/run.mjs ${name}` });
  });

  it("of docs/operating.md run on a record of its own, and the copy of a backup is whole", async () => {
    const outputs = await run(operating.blocks, { keep: false, built: true });
    expect(outputs[0]).toContain("This was a dry run: nothing was stored.");
    expect(outputs[0]).toContain("Stored.");
    expect(outputs[2]).toMatch(/The chain is whole\.\nThe last link is \d+:[0-9a-f]{64};/);
    expect(outputs[4]).toMatch(/^1 patients, \d+ rows of the ledger, 0 differences\.$/m);
  }, 400_000);
});
