import { readFileSync } from "node:fs";
import { Problem, problems } from "../shared/problems.ts";
import { type Command, exitCodes, UsageError } from "./commands/command.ts";
import { importFolder, importUsage } from "./commands/import.ts";
import { ledger, ledgerUsage } from "./commands/ledger.ts";
import { migrate, migrateUsage } from "./commands/migrate.ts";
import { report, reportUsage } from "./commands/report.ts";
import { serve, serveUsage } from "./commands/serve.ts";
import { readConfig } from "./config.ts";
import { ownDatabase } from "./store/database-lock.ts";
import { migrate as migrateDatabase } from "./store/migrate.ts";
import { openStore } from "./store/open-store.ts";

/** The commands, each with the line that says how it is called. */
const commands = new Map<string, { run: Command; usage: string }>([
  ["serve", { run: serve, usage: serveUsage }],
  ["report", { run: report, usage: reportUsage }],
  ["import", { run: importFolder, usage: importUsage }],
  ["ledger", { run: ledger, usage: ledgerUsage }],
  ["migrate", { run: migrate, usage: migrateUsage }],
]);

const { version } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8")) as {
  version: string;
};
const databases = { migrate: migrateDatabase, own: ownDatabase, open: openStore };

/** Runs the command that the process was started with; resolves to the exit code. */
async function main([name = "", ...args]: readonly string[]): Promise<number> {
  const command = commands.get(name);
  if (!command) throw new UsageError(`Name one of the commands ${[...commands.keys()].join(", ")}.`);
  try {
    return await command.run({
      args,
      config: readConfig(process.env),
      clock: Date.now,
      out: write,
      err: (text) => void process.stderr.write(text),
      databases,
      version,
      untilStopped,
      interactive: process.stderr.isTTY === true,
    });
  } catch (error) {
    if (error instanceof UsageError) throw new UsageError(`${error.message}\nUsage: ${command.usage}`);
    throw error;
  }
}

/** Until somebody waits for them, the signals end the process at once, as the system does by itself. */
function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
  });
}

function write(text: string): Promise<void> {
  return new Promise((resolve, reject) => process.stdout.write(text, (error) => (error ? reject(error) : resolve())));
}

/** One clear sentence for what a person can mend; anything else is a bug and is shown whole. */
function explain(error: unknown): number {
  if (error instanceof Problem) {
    process.stderr.write(`${error.message} ${problems[error.code].remedy}\n`);
    return exitCodes.fault;
  }
  if (error instanceof UsageError) {
    process.stderr.write(`${error.message}\n`);
    return exitCodes.usage;
  }
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  return exitCodes.fault;
}

process.exitCode = await main(process.argv.slice(2)).catch(explain);
