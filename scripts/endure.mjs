import { randomInt } from "node:crypto";
import { startPostgres } from "./postgres.mjs";
import { runScript, tell } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";
import { runVitest, totalsLine } from "./vitest-run.mjs";

const stopping = new AbortController();
for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) {
  process.on(signal, () => stopping.abort());
}

/**
 * `npm run endure`: the random edits of tests/ledger, many more of them than the tests make. RUNS says how many on
 * each database (2,000 by default), SEED repeats those of an earlier run.
 */
await runScript(async () => {
  await ensureSetup({ quiet: true });
  const { RUNS = "2000", SEED = String(randomInt(1_000_000)), TEST_POSTGRES_URL } = process.env;
  const server = TEST_POSTGRES_URL ? undefined : await startPostgres({ durable: false });
  tell(`SEED=${SEED} RUNS=${RUNS} repeats what follows`);
  try {
    const env = { ...process.env, RUNS, SEED, TEST_POSTGRES_URL: TEST_POSTGRES_URL ?? server?.url };
    const totals = await runVitest({ args: ["tests/ledger/random-edits.test.ts"], env, signal: stopping.signal });
    process.stdout.write(`SEED=${SEED} RUNS=${RUNS}: ${totalsLine(totals)}\n`);
    if (totals.failed > 0 || stopping.signal.aborted) process.exitCode = 1;
  } finally {
    await server?.stop();
  }
});
