import { join } from "node:path";
import { plainEnvironment, runChild } from "./child.mjs";
import { root } from "./project.mjs";

/**
 * @typedef {object} CheckStep
 * @property {string} name
 * @property {string[]} args for Node
 * @property {(output: string) => { files: number, lines: string[] }} read how many files the step looked at, and
 *   what of its output a person needs to see
 */

/** @type {CheckStep} */
export const types = {
  name: "types",
  args: ["node_modules/typescript-native/bin/tsc", "-p", ".", "--listFiles"],
  read: (output) => {
    const lines = linesOf(output);
    const listed = lines.filter((line) => line.startsWith("/") || /^[A-Z]:/.test(line));
    return {
      files: listed.filter((line) => line.startsWith(root) && !line.includes("/node_modules/")).length,
      lines: lines.filter((line) => !listed.includes(line)),
    };
  },
};

/** @type {CheckStep} */
const style = {
  name: "lint and format",
  args: ["node_modules/@biomejs/biome/bin/biome", "ci", "--colors=off", "."],
  read: (output) => ({ files: numberIn(output, /Checked (\d+) files?/), lines: linesOf(output) }),
};

/** @type {CheckStep} */
const unused = {
  name: "unused code",
  args: [
    "node_modules/knip/bin/knip.js",
    "--no-progress",
    "--reporter",
    "symbols",
    "--reporter",
    "./scripts/knip-count.mjs",
  ],
  read: (output) => ({ files: numberIn(output, /looked at (\d+) files/), lines: linesOf(output) }),
};

/** The steps that read the source without running it, in the order they run. */
export const checkSteps = [types, style, unused];

/**
 * Runs one step and prints a line about it; its own output follows when it found something.
 * A step that looked at no file at all has failed, whatever its exit code.
 * @param {CheckStep} step
 * @returns {Promise<boolean>} true when it passed
 */
export async function runCheckStep({ name, args, read }) {
  const startMs = performance.now();
  const [script = "", ...rest] = args;
  const ended = await runChild(process.execPath, [join(root, script), ...rest], { env: plainEnvironment() });
  const { files, lines } = read(ended.output);
  const passed = ended.code === 0 && files > 0;
  printStep({ name, passed, seen: `${files} files`, startMs });
  if (!passed) process.stdout.write(`${lines.join("\n")}\n`);
  return passed;
}

/**
 * Prints a step's one line: name, result, what it looked at, time.
 * @param {{ name: string, passed: boolean, seen?: string, startMs: number }} step
 */
export function printStep({ name, passed, seen, startMs }) {
  const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
  const looked = seen ? `, ${seen}` : "";
  process.stdout.write(`${passed ? "ok    " : "FAILED"} ${name}${looked}, ${seconds} s\n`);
}

/** @param {string} output */
function linesOf(output) {
  return output.split("\n").filter((line) => line.trim() !== "");
}

/**
 * @param {string} output
 * @param {RegExp} pattern with the number as its first group
 */
function numberIn(output, pattern) {
  return Number(pattern.exec(output)?.[1] ?? 0);
}
