import { ensureWebBuilt } from "./build-web.mjs";
import { checkSteps, printStep, runCheckStep } from "./check-steps.mjs";
import { ensureChromium } from "./chromium.mjs";
import { startPostgres } from "./postgres.mjs";
import { Obstacle, tell } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";
import { runVitest, totalsLine } from "./vitest-run.mjs";

/** @typedef {import("./postgres.mjs").Server} Server */

const stopping = new AbortController();
for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) {
  process.on(signal, () => stopping.abort());
}

/**
 * `npm test [-- ARGUMENT…]`: sets up, checks the source, builds the page, finds a browser, starts a PostgreSQL
 * and runs all tests. The arguments go to vitest; with arguments, the source is not checked.
 * @param {readonly string[]} args
 * @returns {Promise<import("./vitest-run.mjs").Totals>} a failed step counts as one failed test
 */
async function testAll(args) {
  if (!(await passes("set-up", () => ensureSetup()))) return { passed: 0, failed: 1, skipped: 0 };
  let failedSteps = 0;
  if (args.length > 0) tell("The source is not checked when arguments are given: npm run check does that.");
  else for (const step of checkSteps) if (!stopping.signal.aborted && !(await runCheckStep(step))) failedSteps += 1;

  if (!(await passes("web page", ensureWebBuilt))) failedSteps += 1;
  const env = { ...process.env };
  const hasBrowser = await passes("browser", async () => {
    env.CHROMIUM_PATH = await ensureChromium();
  });
  if (!hasBrowser) failedSteps += 1;

  /** @type {Server | undefined} */
  let server;
  const hasPostgres = await passes("PostgreSQL", async () => {
    if (!env.TEST_POSTGRES_URL) server = await startPostgres({ durable: false });
    env.TEST_POSTGRES_URL ??= server?.url;
  });
  if (!hasPostgres) failedSteps += 1;
  try {
    const totals = await testTimed({ args, env });
    return { ...totals, failed: totals.failed + failedSteps };
  } finally {
    await server?.stop();
  }
}

/** @param {{ args: readonly string[], env: NodeJS.ProcessEnv }} options */
async function testTimed({ args, env }) {
  const startMs = performance.now();
  if (stopping.signal.aborted) return { passed: 0, failed: 1, skipped: 0 };
  const totals = await runVitest({ args, env, signal: stopping.signal });
  printStep({ name: "tests", passed: totals.failed === 0, startMs });
  return totals;
}

/**
 * @param {string} name
 * @param {() => Promise<void>} step
 */
async function passes(name, step) {
  const startMs = performance.now();
  try {
    await step();
    printStep({ name, passed: true, startMs });
    return true;
  } catch (error) {
    if (!(error instanceof Obstacle)) throw error;
    tell(error.message);
    printStep({ name, passed: false, startMs });
    return false;
  }
}

const totals = await testAll(process.argv.slice(2));
process.stdout.write(`${totalsLine(totals)}\n`);
process.exitCode = totals.failed > 0 || stopping.signal.aborted ? 1 : 0;
