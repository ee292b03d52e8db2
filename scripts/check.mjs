import { checkSteps, printStep, runCheckStep } from "./check-steps.mjs";
import { runScript } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";
import { runVitest, totalsLine } from "./vitest-run.mjs";

/** `npm run check`: every step runs, also after one has failed. */
await runScript(async () => {
  await ensureSetup({ quiet: true });
  let failed = 0;
  for (const step of checkSteps) if (!(await runCheckStep(step))) failed += 1;
  const startMs = performance.now();
  const house = await runVitest({
    args: ["tests/house.test.ts"],
    env: process.env,
    signal: new AbortController().signal,
  });
  printStep({ name: "house rules", passed: house.failed === 0, seen: totalsLine(house), startMs });
  if (failed + house.failed > 0) process.exitCode = 1;
});
