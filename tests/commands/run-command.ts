import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Command } from "../../src/commands/command.ts";
import { readConfig } from "../../src/config.ts";
import { ownDatabase } from "../../src/store/database-lock.ts";
import { migrate } from "../../src/store/migrate.ts";
import { openStore } from "../../src/store/open-store.ts";

/** What a command said and how it ended. */
export interface CommandRun {
  readonly exitCode: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command as main.ts does, on a database of the test's own. */
export async function runCommand(
  command: Command,
  args: readonly string[],
  { databaseUrl = "file:none", now = Date.UTC(2026, 10, 25, 12) }: { databaseUrl?: string; now?: number } = {},
): Promise<CommandRun> {
  let out = "";
  let err = "";
  const exitCode = await command({
    args,
    config: readConfig({ DWELL_DATABASE_URL: databaseUrl, DWELL_ZONE: "America/New_York" }),
    clock: () => now,
    out: async (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    databases: { migrate, own: ownDatabase, open: openStore },
    interactive: false,
    version: "0.0.0-test",
    untilStopped: () => Promise.resolve(),
  });
  return { exitCode, out, err };
}

/** A folder of files that is gone after `use`. */
export async function withFolder<T>(
  files: Readonly<Record<string, string>>,
  use: (folder: string) => Promise<T>,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "dwell-files-"));
  try {
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
