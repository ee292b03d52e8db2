import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { ensureProgramBuilt, program } from "../../scripts/build-program.mjs";
import { openStore } from "../../src/store/open-store.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { writeDemoFolder } from "./demo-folder.ts";

const folder = mkdtempSync(join(tmpdir(), "dwell-killed-"));
let moves = 0;

beforeAll(async () => {
  await ensureProgramBuilt();
  const now = Date.UTC(2026, 9, 31, 12);
  const counts = await writeDemoFolder(folder, { seed: 7, zone: "America/New_York", now, days: 45 });
  moves = counts["moves.csv"] ?? 0;
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a command in a process of its own; kills it `delayMs` after it said `when`, if that is given. */
function run(databaseUrl: string, args: string[], kill?: { when: string; delayMs: number }): Promise<number | null> {
  const child = spawn(process.execPath, [program, ...args], {
    env: { ...process.env, DWELL_DATABASE_URL: databaseUrl, DWELL_ZONE: "America/New_York" },
    stdio: ["ignore", "ignore", "pipe"],
  });
  let said = "";
  child.stderr.on("data", (chunk: Buffer) => {
    const before = said.includes(kill?.when ?? "\0");
    said += chunk.toString();
    if (kill && !before && said.includes(kill.when)) setTimeout(() => child.kill("SIGKILL"), kill.delayMs);
  });
  return new Promise((resolve) => child.on("close", (code) => resolve(code)));
}

async function storedMoves(databaseUrl: string): Promise<number> {
  const store = openStore(databaseUrl);
  try {
    return await store.read((read) => read.db.wardStay.count());
  } finally {
    await store.close();
  }
}

const kills = [
  { when: "Reading lines", delayMs: 20, all: false },
  { when: "Checking lines", delayMs: 30, all: false },
  { when: "Storing lines", delayMs: 5, all: true },
  { when: "Storing lines", delayMs: 120, all: true },
];

onEachDatabase("an import killed by SIGKILL", (fresh) => {
  it.each(kills)(
    "$delayMs ms after “$when” is all or none after the next start",
    async ({ when, delayMs, all }) => {
      const database = await fresh();
      try {
        expect(await run(database.url, ["import", "--data", folder], { when, delayMs })).toBe(null);
        // The next start of any command finishes what was decided, and drops what was not.
        expect(await run(database.url, ["ledger", "verify"])).toBe(0);
        expect(await storedMoves(database.url)).toBe(all ? moves : 0);
        expect(await run(database.url, ["import", "--data", folder])).toBe(0);
        expect(await storedMoves(database.url)).toBe(moves);
        expect(await run(database.url, ["ledger", "verify"])).toBe(0);
      } finally {
        await database.drop();
      }
    },
    120_000,
  );
});
