import type { Store } from "../usecases/act.ts";
import { rebuildDeterminations, verifyDeterminations } from "../usecases/check-determinations.ts";
import { firstActor } from "../usecases/find-facility.ts";
import { type Command, type CommandContext, exitCodes, UsageError } from "./command.ts";
import { readOptions } from "./read-options.ts";
import { withDatabase } from "./with-database.ts";

/** How the command is called. */
export const determinationsUsage = "npm run determinations -- verify | rebuild";

/** Compares what cultures were determined to be with the record, and on `rebuild` determines anew what differs. */
export const determinations: Command = async (context) => {
  const { positionals } = readOptions(context.args, {}, { positionals: true });
  const [action, ...more] = positionals;
  if ((action !== "verify" && action !== "rebuild") || more.length > 0) throw new UsageError("Say verify or rebuild.");
  return withDatabase(context, (store) => check(store, context, action));
};

async function check(store: Store, context: CommandContext, action: "verify" | "rebuild"): Promise<number> {
  const actor = await firstActor(store);
  if (!actor) {
    await context.out("There is no facility yet, so nothing was determined.\n");
    return exitCodes.well;
  }
  const run = action === "verify" ? verifyDeterminations : rebuildDeterminations;
  const { patients, cases, differences } = await run({ store, actor, now: context.clock() });
  for (const { caseId, kept, determined } of differences)
    await context.err(`case ${caseId}: kept is ${kept ?? "nothing"}, the record says ${determined ?? "nothing"}\n`);
  const wrong = differences.length;
  const done = action === "rebuild" && wrong > 0 ? " They are right now." : "";
  await context.out(`${cases} cultures of ${patients} patients, ${wrong} differences.${done}\n`);
  return wrong === 0 || action === "rebuild" ? exitCodes.well : exitCodes.fault;
}
