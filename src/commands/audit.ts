import type { AuditVerification } from "../usecases/audit/verify-audit.ts";
import { verifyAudit } from "../usecases/audit/verify-audit.ts";
import { type Command, exitCodes, UsageError } from "./command.ts";
import { readOptions } from "./read-options.ts";
import { withDatabase } from "./with-database.ts";

/** How the command is called. */
export const auditUsage = "npm run audit -- verify [--head NUMBER:HASH]";

/** Recomputes the sealed chain of the audit trail, and compares it with a link that was written down earlier. */
export const audit: Command = async (context) => {
  const { positionals, values } = readOptions(context.args, { head: { type: "string" } }, { positionals: true });
  if (positionals.join() !== "verify") throw new UsageError("Say verify.");
  const known = values.head === undefined ? null : readHead(values.head);
  return withDatabase(context, async (store) => {
    const found = await verifyAudit(store, known);
    await context.out(textOf(found));
    return found.whole ? exitCodes.well : exitCodes.fault;
  });
};

function readHead(text: string): { number: number; hash: string } {
  const [, number, hash] = /^([1-9]\d{0,9}):([0-9a-f]{64})$/.exec(text) ?? [];
  if (number === undefined || hash === undefined)
    throw new UsageError("--head takes a number and a hash as an earlier verify printed them.");
  return { number: Number(number), hash };
}

function textOf({ sealed, waiting, firstFault, head }: AuditVerification): string {
  const chain = firstFault ? `NOT whole: entry ${firstFault.number}. ${firstFault.detail}` : "whole.";
  const last = head ? `The last link is ${head.number}:${head.hash}; keep it where this program cannot write.\n` : "";
  return `${sealed} entries sealed, ${waiting} waiting. The chain is ${chain}\n${last}`;
}
