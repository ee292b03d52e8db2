import { type ParseArgsConfig, parseArgs } from "node:util";
import { UsageError } from "./command.ts";

/** Reads the options of a command. Throws a {@link UsageError} for one that is unknown or lacks its value. */
export function readOptions<T extends NonNullable<ParseArgsConfig["options"]>>(
  args: readonly string[],
  options: T,
  { positionals = false } = {},
) {
  try {
    return parseArgs({ args: [...args], options, strict: true, allowPositionals: positionals });
  } catch (error) {
    const reason = error instanceof Error ? (error.message.split(/\.\s/)[0] ?? "") : "";
    throw new UsageError(`${reason}.`);
  }
}
