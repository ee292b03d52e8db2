import { type ParseArgsConfig, parseArgs } from "node:util";
import { UsageError } from "./command.ts";
import { nearestOf } from "./nearest.ts";

/**
 * Reads the options of a command. Throws a {@link UsageError} for one that lacks its value, and for an unknown one, with the
 * option that was probably meant.
 */
export function readOptions<T extends NonNullable<ParseArgsConfig["options"]>>(
  args: readonly string[],
  options: T,
  { positionals = false } = {},
) {
  try {
    return parseArgs({ args: [...args], options, strict: true, allowPositionals: positionals });
  } catch (error) {
    const reason = error instanceof Error ? (error.message.split(/\.\s/)[0] ?? "") : "";
    const [, unknown] = /Unknown option '--([^']+)'/.exec(reason) ?? [];
    const nearest = unknown === undefined ? null : nearestOf(unknown, Object.keys(options));
    throw new UsageError(nearest === null ? `${reason}.` : `${reason}. Did you mean --${nearest}?`);
  }
}
