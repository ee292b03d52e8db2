import { fileURLToPath } from "node:url";
import { readSentFiles } from "../csv/sent-files.ts";
import { buildApp } from "../http/app.ts";
import { heavyThreads } from "../http/heavy/heavy-threads.ts";
import { listenLocally } from "../http/listen.ts";
import { safeLogger } from "../http/logger.ts";
import { localPrincipal } from "../http/principal.ts";
import type { Store } from "../usecases/act.ts";
import { keepImporting } from "../usecases/imports/keep-importing.ts";
import { keepSealing } from "../usecases/jobs/keep-sealing.ts";
import { isDemo } from "../usecases/settings/find-facility.ts";
import { type Command, type CommandContext, exitCodes } from "./command.ts";
import { loadDemoOrSetUp } from "./first-run.ts";
import { readOptions } from "./read-options.ts";
import { withDatabase } from "./with-database.ts";

/** How the command is called. */
export const serveUsage = "npm start [-- --empty]";

/** The built program of the threads for heavy work: see scripts/build-program.mjs. */
const heavyProgram = fileURLToPath(new URL("../../dist/program/heavy.mjs", import.meta.url));
const staticFolder = fileURLToPath(new URL("../../dist/web/", import.meta.url));

/** Serves the page and the API until the process is told to stop; requests under way are then finished. */
export const serve: Command = async (context) => {
  const { values } = readOptions(context.args, { empty: { type: "boolean", default: false } });
  return withDatabase(context, async (store) => {
    await loadDemoOrSetUp(store, context, values.empty);
    await serveUntilStopped(store, context);
    return exitCodes.well;
  });
};

async function serveUntilStopped(store: Store, context: CommandContext): Promise<void> {
  const demo = await isDemo(store);
  const logger = safeLogger({ level: context.config.logLevel });
  const { databaseUrl, browserPath } = context.config;
  const heavy = heavyThreads(heavyProgram, { databaseUrl, browserPath, version: context.version });
  const app = await buildApp({
    store,
    clock: context.clock,
    principalOf: localPrincipal({ store, demo }),
    version: context.version,
    staticFolder,
    heavy,
    logger,
  });
  const importer = keepImporting(store, {
    clock: context.clock,
    readFiles: readSentFiles,
    onError: (err) => logger.error({ err }, "files that were sent could not be read or stored"),
  });
  const sealer = keepSealing(store, {
    clock: context.clock,
    onError: (err) => logger.error({ err }, "the audit trail could not be sealed, or old answers not dropped"),
  });
  try {
    const stopped = context.untilStopped();
    const address = await listenLocally(app, context.config.port);
    await context.out(`Dwell Ledger${demo ? " with the demo hospital" : ""} is at ${address}\n`);
    await stopped;
  } finally {
    await app.close();
    await heavy.close();
    await importer.stop();
    await sealer.stop();
  }
}
