import type { Config } from "../config.ts";
import type { Store } from "../usecases/act.ts";

/** What a command may use of the outside. Nothing here knows the process, the clock or the environment by itself. */
export interface CommandContext {
  readonly args: readonly string[];
  readonly config: Config;
  /** The version of the program. */
  readonly version: string;
  /** Resolves when the process is told to stop. A command that never asks is ended at once instead. */
  readonly untilStopped: () => Promise<void>;
  /** The present instant in UTC milliseconds. */
  readonly clock: () => number;
  /** Standard output and standard error; a text is written as it is. */
  readonly out: (text: string) => Promise<void>;
  readonly err: (text: string) => void;
  readonly databases: Databases;
  /** True when standard error is a terminal: then progress is shown. */
  readonly interactive: boolean;
}

/** How a command comes to a database. */
export interface Databases {
  /** Brings a database up to date; resolves to the names of what was applied. */
  migrate(url: string): Promise<string[]>;
  /** Takes a database for this process alone; refuses `database-in-use`. */
  own(url: string): { release(): void };
  open(url: string): Store;
}

/** Exit codes: all is well, the data or the database is at fault, the command was called wrongly. */
export const exitCodes = { well: 0, fault: 1, usage: 2 } as const;

/** A command of the command line; resolves to the exit code. */
export type Command = (context: CommandContext) => Promise<number>;

/** The command was called wrongly; the message says how, in one sentence. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
