import { randomInt } from "node:crypto";
import { startPostgres } from "./postgres.mjs";
import { runScript, tell } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";
import { runVitest, totalsLine } from "./vitest-run.mjs";

const stopping = new AbortController();
for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) {
  process.on(signal, () => stopping.abort());
}

/** How long the long runs are, and what each number counts; every one can be set in the environment. */
const lengths = {
  RUNS: { usual: "2000", counts: "random runs of edits on each database" },
  RACES: { usual: "1000", counts: "races of eight clients on each database" },
  PAIRS: { usual: "500", counts: "pairs of one creation on each database" },
  KILLS: { usual: "30", counts: "kills of the service on each database" },
  REQUESTS: { usual: "100000", counts: "random requests on each database" },
  TIMELINES: { usual: "1000000", counts: "random timelines judged by two implementations, for each edition" },
  SIGNINGS: { usual: "1000", counts: "signings raced with late entries on each database" },
  FOLDERS: { usual: "1000", counts: "folders with damaged lines, and as many without, on each database" },
  CUTS: { usual: "20", counts: "power cuts" },
};
const files = [
  "tests/ledger/random-edits.test.ts",
  "tests/storm",
  "tests/damaged",
  "tests/domain/criteria/random-timelines.test.ts",
];

/**
 * `npm run endure`: the randomized runs of the tests, many more of each. SEED repeats those of an earlier run; a number
 * such as RACES=50 makes one of them shorter; arguments choose the files.
 */
await runScript(async () => {
  await ensureSetup({ quiet: true });
  const { SEED = String(randomInt(1_000_000)), TEST_POSTGRES_URL } = process.env;
  const chosen = Object.entries(lengths).map(([name, { usual }]) => [name, process.env[name] ?? usual]);
  const server = TEST_POSTGRES_URL ? undefined : await startPostgres({ durable: false });
  const told = [["SEED", SEED], ...chosen].map((pair) => pair.join("=")).join(" ");
  tell(`${told} repeats what follows:`);
  for (const [name, length] of chosen)
    tell(`  ${length} ${lengths[/** @type {keyof typeof lengths} */ (name)].counts}`);
  try {
    const args = process.argv.length > 2 ? process.argv.slice(2) : files;
    const env = {
      ...process.env,
      ...Object.fromEntries(chosen),
      SEED,
      TEST_POSTGRES_URL: TEST_POSTGRES_URL ?? server?.url,
    };
    const totals = await runVitest({ args, env, signal: stopping.signal });
    process.stdout.write(`${told}: ${totalsLine(totals)}\n`);
    if (totals.failed > 0 || stopping.signal.aborted) process.exitCode = 1;
  } finally {
    await server?.stop();
  }
});
