import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./project.mjs";

/**
 * @typedef {object} VitestReport what vitest's JSON reporter writes, as far as it is used here
 * @property {number} numPassedTests
 * @property {number} numFailedTests
 * @property {number} numPendingTests
 * @property {number} numTodoTests
 * @property {{ status: string, assertionResults: { status: string }[] }[]} testResults one for each test file
 */

/** @typedef {{ passed: number, failed: number, skipped: number }} Totals */

/**
 * Runs vitest on the terminal, and reads its results from its JSON report rather than from the screen.
 * @param {{ args: readonly string[], env: NodeJS.ProcessEnv, signal: AbortSignal }} options
 * @returns {Promise<Totals>}
 */
export async function runVitest({ args, env, signal }) {
  const folder = mkdtempSync(join(tmpdir(), "dwell-ledger-vitest-"));
  const reportPath = join(folder, "report.json");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${reportPath}`];
  try {
    const code = await runToEnd([join(root, "node_modules/vitest/vitest.mjs"), "run", ...reporters, ...args], {
      env,
      signal,
    });
    /** @type {VitestReport | null} */
    const report = existsSync(reportPath) ? JSON.parse(readFileSync(reportPath, "utf8")) : null;
    return totalsOf(report, code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * The totals of a run. A test file that could not be read counts as one failed test; so does an error outside
 * any test, a run without a report, and a run without a single test.
 * @param {VitestReport | null} report
 * @param {number} code vitest's exit code
 * @returns {Totals}
 */
export function totalsOf(report, code) {
  if (!report) return { passed: 0, failed: 1, skipped: 0 };
  const unreadable = report.testResults.filter(
    ({ status, assertionResults }) => status === "failed" && !assertionResults.some((test) => test.status === "failed"),
  );
  const failed = report.numFailedTests + unreadable.length;
  const ran = report.numPassedTests + report.numFailedTests;
  const hidden = failed === 0 && (code !== 0 || ran === 0) ? 1 : 0;
  return {
    passed: report.numPassedTests,
    failed: failed + hidden,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/**
 * The last line of a run: `N passed, N failed`, and `, N skipped` when there are any.
 * @param {Totals} totals
 */
export function totalsLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}

/**
 * @param {readonly string[]} args for Node
 * @param {{ env: NodeJS.ProcessEnv, signal: AbortSignal }} options
 * @returns {Promise<number>} exit code
 */
function runToEnd(args, { env, signal }) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd: root, env, stdio: "inherit" });
    signal.addEventListener("abort", () => child.kill("SIGTERM"), { once: true });
    child.on("error", () => resolve(1));
    child.on("close", (code) => resolve(code ?? 1));
  });
}
