import { dayText } from "../domain/days/day-number.ts";
import type { Store } from "../usecases/act.ts";
import { type LedgerDifference, rebuildLedger, verifyLedger } from "../usecases/check-ledger.ts";
import { firstActor } from "../usecases/find-facility.ts";
import { type Command, type CommandContext, exitCodes, UsageError } from "./command.ts";
import { readOptions } from "./read-options.ts";
import { withDatabase } from "./with-database.ts";

/** How the command is called. */
export const ledgerUsage = "npm run ledger -- verify | rebuild";

/** Compares the ledger with a recount by another method, and on `rebuild` makes it right. */
export const ledger: Command = async (context) => {
  const { positionals } = readOptions(context.args, {}, { positionals: true });
  const [action, ...more] = positionals;
  if ((action !== "verify" && action !== "rebuild") || more.length > 0) throw new UsageError("Say verify or rebuild.");
  return withDatabase(context, (store) => check(store, context, action));
};

async function check(store: Store, context: CommandContext, action: "verify" | "rebuild"): Promise<number> {
  const actor = await firstActor(store);
  if (!actor) {
    await context.out("There is no facility yet, so the ledger is empty.\n");
    return exitCodes.well;
  }
  const act = { store, actor, now: context.clock() };
  const run = action === "verify" ? verifyLedger : rebuildLedger;
  const result = await run(act, (difference) => context.err(`${differenceText(difference)}\n`));
  const wrong = result.differences.length;
  const done = action === "rebuild" && wrong > 0 ? " They are right now." : "";
  await context.out(`${result.patients} patients, ${result.rows} rows of the ledger, ${wrong} differences.${done}\n`);
  return wrong === 0 || action === "rebuild" ? exitCodes.well : exitCodes.fault;
}

function differenceText({ patientId, day, ledger: row, recount }: LedgerDifference): string {
  return `patient ${patientId}, ${dayText(day)}: the ledger has ${rowText(row)}, the recount ${rowText(recount)}`;
}

function rowText(row: LedgerDifference["ledger"]): string {
  if (row === null) return "no day";
  return `ward ${row.wardId}, stay ${row.stayId}, ${row.catheter ? "with" : "without"} a catheter`;
}
