import { spawn } from "node:child_process";
import { root } from "./project.mjs";

/** @typedef {{ code: number, output: string }} Ended code 0 means success; a signal or a missing program counts as 1 */

/**
 * Runs a program to its end and keeps what it printed on both streams.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, show?: boolean }} [options] `show`: also pass its output on to standard error
 * @returns {Promise<Ended>}
 */
export function runChild(program, args, { env = process.env, show = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { cwd: root, env, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    /** @param {Buffer} chunk */
    const keep = (chunk) => {
      output += chunk.toString("utf8");
      if (show) process.stderr.write(chunk);
    };
    child.stdout.on("data", keep);
    child.stderr.on("data", keep);
    child.on("error", (error) => resolve({ code: 1, output: `${output}${error.message}` }));
    child.on("close", (code) => resolve({ code: code ?? 1, output }));
  });
}

/**
 * The environment without the colors that a terminal would get, so that output can be read by a program.
 * @returns {NodeJS.ProcessEnv}
 */
export function plainEnvironment() {
  const { FORCE_COLOR: _, ...rest } = process.env;
  return { ...rest, NO_COLOR: "1" };
}
