import type { signMonth as endpoint } from "../../../shared/api/month-figures.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { gapWords } from "../../../shared/gap-words.ts";
import type { MonthReport } from "../../../shared/month-report.ts";
import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import type { Role } from "../../../shared/vocabulary.ts";
import { monthDays } from "../../domain/days/month.ts";
import { canonicalText, lastingReport } from "../../domain/reports/canonical-text.ts";
import { gapSentence } from "../../domain/reports/gap-sentence.ts";
import type { Gap } from "../../domain/reports/gaps.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { closeSignedMonthChanges } from "../../store/signed-month-changes.ts";
import { addSignature, type SignatureRow, signatures } from "../../store/signed-months.ts";
import { type Act, type Actor, recording } from "../act.ts";
import { determineByNow } from "../cultures/determine-by-now.ts";
import { reachOf } from "../reach.ts";
import { censusTaken } from "./census-taken.ts";
import { readFigures } from "./read-figures.ts";
import { digestOf, seenDigest } from "./read-month-figures.ts";
import { signatureShown } from "./read-signatures.ts";

/**
 * Signs a month of the facility as the person saw it, or signs it anew. The figures are read from one snapshot before
 * the signature is stored: whatever is written after that snapshot shows as a difference. What passing time
 * changed of determinations is determined first, so that nobody signs what would be another figure on the next look.
 * Refuses `in-the-future`, `month-not-ready` with everything that blocks, `month-changed`, `stale-version` when somebody
 * signed since, `amendment-reason-missing` and `nothing-to-amend`.
 */
export async function signMonth(act: Act, input: InputOf<typeof endpoint>): Promise<OutputOf<typeof endpoint>> {
  const { month, seen, replaces, reason } = input;
  await censusTaken(act, monthDays(month).first, "/month");
  if (replaces > 0 && reason === null)
    refuse("amendment-reason-missing", "The month was signed before.", { pointer: "/reason" });
  await determineByNow(act);
  const { report, gaps } = await act.store.read((read) => readFigures(read, act, { month }));
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    const latest = (await signatures(tx, by.facilityId, month)).at(-1);
    refuseStale(latest, replaces);
    refuseBlocked(gaps, report);
    if (seenDigest(report) !== seen) refuse("month-changed", "Something was recorded since.");
    if (latest?.seen === seen) refuse("nothing-to-amend", "The figures are those that were signed.");
    const text = canonicalText(lastingReport(report));
    const signature = {
      ...{ month, number: replaces + 1, digest: digestOf(text), seen, role: signingRole(act.actor), reason },
    };
    await addSignature(tx, by, { ...signature, text });
    await closeSignedMonthChanges(tx, by.facilityId, month);
    await writeAudit(tx, by, { action: "sign-month", details: { month, number: signature.number } });
    return { month, signature: signatureShown({ ...signature, signedAt: by.now, signedBy: by.personId }) };
  });
}

function refuseStale(latest: SignatureRow | undefined, replaces: number): void {
  const number = latest?.number ?? 0;
  if (number === replaces) return;
  const detail = `The latest signature is number ${number} by now.`;
  const problem = new Problem({ code: "stale-version", pointer: "", detail });
  problem.current = latest ? { ...signatureShown(latest), signedAt: new Date(latest.signedAt).toISOString() } : {};
  throw problem;
}

function refuseBlocked(gaps: readonly Gap[], { wards }: MonthReport): void {
  const faults = gaps
    .filter(({ kind }) => gapWords[kind].blocks)
    .map((gap): Fault => {
      const ward = wards.find(({ wardId }) => wardId === gap.wardId);
      const where = ward ? `${ward.code}: ` : "";
      return {
        code: "month-not-ready",
        pointer: "",
        detail: `${where}${gapSentence(gap)} ${gapWords[gap.kind].remedy}`,
      };
    });
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
}

/** The role in which the person signs. */
function signingRole(actor: Actor): Role {
  const role = actor.roles.find((one) => reachOf({ ...actor, roles: [one] }, "sign-month") !== null);
  if (role === undefined) throw new Error("nobody signs without a role that may");
  return role;
}
