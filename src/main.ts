import { readFileSync } from "node:fs";
import { Problem, problems } from "../shared/problems.ts";
import { type Command, exitCodes, UsageError } from "./commands/command.ts";
import { nearestOf } from "./commands/nearest.ts";
import { readConfig } from "./config.ts";
import { ownDatabase } from "./store/database-lock.ts";
import { migrate as migrateDatabase } from "./store/migrate.ts";
import { openStore } from "./store/open-store.ts";

/** The commands, each loaded when it is asked for, with the line that says how it is called. */
const commands = new Map<string, () => Promise<{ run: Command; usage: string }>>([
  ["serve", () => import("./commands/serve.ts").then((m) => ({ run: m.serve, usage: m.serveUsage }))],
  ["report", () => import("./commands/report.ts").then((m) => ({ run: m.report, usage: m.reportUsage }))],
  ["import", () => import("./commands/import.ts").then((m) => ({ run: m.importFolder, usage: m.importUsage }))],
  ["ledger", () => import("./commands/ledger.ts").then((m) => ({ run: m.ledger, usage: m.ledgerUsage }))],
  [
    "determinations",
    () => import("./commands/determinations.ts").then((m) => ({ run: m.determinations, usage: m.determinationsUsage })),
  ],
  ["audit", () => import("./commands/audit.ts").then((m) => ({ run: m.audit, usage: m.auditUsage }))],
  ["migrate", () => import("./commands/migrate.ts").then((m) => ({ run: m.migrate, usage: m.migrateUsage }))],
]);

const { version } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8")) as {
  version: string;
};
const databases = { migrate: migrateDatabase, own: ownDatabase, open: openStore };

/** Runs the command that the process was started with; resolves to the exit code. */
async function main([name = "", ...args]: readonly string[]): Promise<number> {
  const names = [...commands.keys()];
  const load = commands.get(name);
  if (!load) {
    const nearest = nearestOf(name, names);
    throw new UsageError(`${nearest ? `Did you mean ${nearest}? ` : ""}Name one of the commands ${names.join(", ")}.`);
  }
  const command = await load();
  if (args.some((arg) => arg === "--help" || arg === "-h")) {
    await write(`Usage: ${command.usage}\n`);
    return exitCodes.well;
  }
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
  // Whoever reads the output has enough of it, such as `head`.
  if (isSystemError(error) && error.code === "EPIPE") return exitCodes.fault;
  if (error instanceof Problem) {
    process.stderr.write(`${error.message} ${problems[error.code].remedy}\n`);
    return exitCodes.fault;
  }
  if (error instanceof UsageError) {
    process.stderr.write(`${error.message}\n`);
    return exitCodes.usage;
  }
  if (isSystemError(error)) {
    process.stderr.write(`The operating system refused something: ${error.message}.\n`);
    return exitCodes.fault;
  }
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  return exitCodes.fault;
}

/** What the operating system answers to a file or a stream, such as that its disk is full. */
function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && "code" in error && "syscall" in error;
}

// The call that wrote hears of the failure; without this it would end the process at once, with a stack.
process.stdout.on("error", () => undefined);
process.exitCode = await main(process.argv.slice(2)).catch(explain);
