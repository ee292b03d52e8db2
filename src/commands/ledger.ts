import { dayText } from "../domain/days/day-number.ts";
import { type LedgerDifference, rebuildLedger, verifyLedger } from "../usecases/jobs/check-ledger.ts";
import { verifyOrRebuild } from "./verify-or-rebuild.ts";

/** How the command is called. */
export const ledgerUsage = "npm run ledger -- verify | rebuild";

/** Compares the ledger with a recount by another method, and on `rebuild` makes it right. */
export const ledger = verifyOrRebuild({
  empty: "There is no facility yet, so the ledger is empty.",
  run: async (action, act, tell) => {
    const check = action === "verify" ? verifyLedger : rebuildLedger;
    const { patients, rows, differences } = await check(act, (difference) => tell(differenceText(difference)));
    return { looked: `${patients} patients, ${rows} rows of the ledger`, differences: differences.length };
  },
});

function differenceText({ patientId, day, ledger: row, recount }: LedgerDifference): string {
  return `patient ${patientId}, ${dayText(day)}: the ledger has ${rowText(row)}, the recount ${rowText(recount)}`;
}

function rowText(row: LedgerDifference["ledger"]): string {
  if (row === null) return "no day";
  return `ward ${row.wardId}, stay ${row.stayId}, ${row.catheter ? "with" : "without"} a catheter`;
}
