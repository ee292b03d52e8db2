import { dirname } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's folder, whatever folder a script was started from. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/**
 * Something the person can mend: shown as one sentence, without a stack trace.
 * Everything else that a script throws is a bug and shows its stack.
 */
export class Obstacle extends Error {}

/**
 * Tells the person at the terminal one line. Goes to standard error, because standard output belongs
 * to the command that runs next: `report --format csv` must print nothing but its lines.
 * @param {string} line
 */
export function tell(line) {
  process.stderr.write(`${line}\n`);
}

/**
 * Runs a script's body; an {@link Obstacle} becomes one sentence and exit code 1.
 * @param {() => Promise<void>} body
 */
export async function runScript(body) {
  try {
    await body();
  } catch (error) {
    if (!(error instanceof Obstacle)) throw error;
    tell(error.message);
    process.exitCode = 1;
  }
}
