import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { runChild } from "./child.mjs";
import { chosenPart, leastKilled, verdictOf } from "./mutation/verdict.mjs";
import { Obstacle, root, runScript, tell } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";
import { digestOf, isStamped, writeStamp } from "./stamp.mjs";

const folder = "scripts/mutation";
const stryker = join(root, folder, "node_modules/@stryker-mutator/core/bin/stryker.js");
const reportPath = join(root, "dist/mutation/report.json");
const knownPath = join(root, "dist/mutation/incremental.json");

/**
 * Installs Stryker beside its own lock file: it would be half as many packages again for everybody who installs the
 * project. It finds the project's vitest in the folders above.
 */
async function ensureStryker() {
  const stamp = join(root, folder, "node_modules/.installed");
  const digest = digestOf([`${folder}/package-lock.json`], process.versions.modules);
  if (existsSync(stryker) && isStamped(stamp, digest)) return;
  tell("Installing Stryker with npm ci.");
  const args = ["ci", "--prefix", folder, "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  const { code, output } = await runChild("npm", args);
  if (code !== 0) throw new Obstacle(`Stryker could not be installed: ${output.trim()}`);
  writeStamp(stamp, digest);
}

/**
 * What survived is tried again each time: Stryker sees that a test file has changed, but not that a story or a text has
 * which it reads.
 */
function forgetSurvivors() {
  if (!existsSync(knownPath)) return;
  /** @type {import("./mutation/verdict.mjs").Report} */
  const known = JSON.parse(readFileSync(knownPath, "utf8"));
  for (const file of Object.values(known.files)) {
    file.mutants = file.mutants.filter(
      ({ status }) => status === "Killed" || status === "Timeout" || status === "Ignored",
    );
  }
  writeFileSync(knownPath, JSON.stringify(known));
}

/** @param {string} line */
function print(line) {
  process.stdout.write(`${line}\n`);
}

/**
 * `npm run mutate [-- PATTERN…]`: changes the rules and the arithmetic of days in every small way and tells which of
 * the changes no test notices. Patterns choose files; what was killed earlier is not tried again while neither the
 * file nor the test that killed it has changed. Without dist/mutation all is tried anew.
 */
await runScript(async () => {
  await ensureSetup({ quiet: true });
  await ensureStryker();
  const startMs = performance.now();
  forgetSurvivors();
  const chosen = process.argv.slice(2);
  const args = [
    stryker,
    "run",
    ...(chosen.length > 0 ? ["--mutate", chosen.join(",")] : []),
    `${folder}/stryker.config.json`,
  ];
  const { code, output } = await runChild(process.execPath, args, { show: true });
  if (code !== 0) throw new Obstacle(`Stryker failed: ${output.trim().split("\n").at(-1)}`);
  const explained = JSON.parse(readFileSync(join(root, folder, "survivors.json"), "utf8"));
  const report = chosenPart(JSON.parse(readFileSync(reportPath, "utf8")), chosen);
  const { killed, total, unexplained, gone } = verdictOf(report, explained);
  for (const { name, location } of unexplained) print(`alive without a reason, line ${location.start.line}: ${name}`);
  for (const name of gone) print(`listed as alive, and killed or gone: ${name}`);
  const minutes = ((performance.now() - startMs) / 60_000).toFixed(1);
  const rate = total === 0 ? 0 : killed / total;
  print(
    `${killed} of ${total} mutants killed, ${(100 * rate).toFixed(1)} %, ${unexplained.length} alive without a reason, ${minutes} minutes`,
  );
  if (rate < leastKilled || unexplained.length > 0 || gone.length > 0) process.exitCode = 1;
});
