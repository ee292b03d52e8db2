import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Command, CommandContext } from "../../src/commands/command.ts";
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

export interface RunOptions {
  readonly databaseUrl?: string;
  readonly now?: number;
  /** Further settings, by the names of the environment. */
  readonly settings?: Readonly<Record<string, string>>;
  /** Called with everything that the command says, when it says it. */
  readonly onOut?: (text: string) => void;
  /** When the command is told to stop; at once unless told otherwise. */
  readonly stopped?: Promise<void>;
}

/** What main.ts hands to a command, on a database and with a clock of the test's own, and what was said so far. */
export function commandContext(
  args: readonly string[],
  { databaseUrl = "file:none", now = Date.UTC(2026, 10, 25, 12), ...more }: RunOptions = {},
): { context: CommandContext; out: () => string; err: () => string } {
  let out = "";
  let err = "";
  const context: CommandContext = {
    args,
    config: readConfig({ DWELL_DATABASE_URL: databaseUrl, DWELL_ZONE: "America/New_York", ...more.settings }),
    clock: () => now,
    out: async (text) => {
      out += text;
      more.onOut?.(text);
    },
    err: (text) => {
      err += text;
    },
    databases: { migrate, own: ownDatabase, open: openStore },
    interactive: false,
    version: "0.0.0-test",
    untilStopped: () => more.stopped ?? Promise.resolve(),
  };
  return { context, out: () => out, err: () => err };
}

/** Runs a command as main.ts does. */
export async function runCommand(
  command: Command,
  args: readonly string[],
  options: RunOptions = {},
): Promise<CommandRun> {
  const { context, out, err } = commandContext(args, options);
  const exitCode = await command(context);
  return { exitCode, out: out(), err: err() };
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
