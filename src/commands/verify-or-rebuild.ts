import type { Act } from "../usecases/act.ts";
import { firstActor } from "../usecases/settings/find-facility.ts";
import { type Command, exitCodes, UsageError } from "./command.ts";
import { readOptions } from "./read-options.ts";
import { withDatabase } from "./with-database.ts";

/** What a command compares with the record, or makes right. */
export interface Checked {
  /** What is said where there is no facility yet. */
  readonly empty: string;
  /** Looks, or makes right; `tell` prints a line for each difference. Returns what was looked at, and how much of it differed. */
  readonly run: (
    action: "verify" | "rebuild",
    act: Act,
    tell: (line: string) => void | Promise<void>,
  ) => Promise<{ looked: string; differences: number }>;
}

/** A command that is told `verify` or `rebuild`. It ends in a fault when something differs and was left as it is. */
export function verifyOrRebuild({ empty, run }: Checked): Command {
  return async (context) => {
    const { positionals } = readOptions(context.args, {}, { positionals: true });
    const [action, ...more] = positionals;
    if ((action !== "verify" && action !== "rebuild") || more.length > 0)
      throw new UsageError("Say verify or rebuild.");
    return withDatabase(context, async (store) => {
      const actor = await firstActor(store);
      if (!actor) {
        await context.out(`${empty}\n`);
        return exitCodes.well;
      }
      const act = { store, actor, now: context.clock() };
      const { looked, differences } = await run(action, act, (line) => context.err(`${line}\n`));
      const done = action === "rebuild" && differences > 0 ? " They are right now." : "";
      await context.out(`${looked}, ${differences} differences.${done}\n`);
      return differences === 0 || action === "rebuild" ? exitCodes.well : exitCodes.fault;
    });
  };
}
