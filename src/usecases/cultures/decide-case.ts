import type { AuditAction } from "../../../shared/audit-words.ts";
import type { CaseDecision, CaseState } from "../../../shared/case-words.ts";
import { refuse } from "../../../shared/problems.ts";
import { caseStateOf, needsPerson } from "../../domain/cultures/case-state.ts";
import { writeAudit } from "../../store/audit.ts";
import { addDecision } from "../../store/decisions.ts";
import { determinationIn, determinationsOfCase, type KeptDetermination } from "../../store/determinations.ts";
import { lockPatient } from "../../store/patients.ts";
import { type Act, recording } from "../act.ts";
import { sameVersion } from "../same-version.ts";
import { caseSaid } from "./determination-rows.ts";
import { determineAgain } from "./determine-again.ts";

export interface DecideCase {
  readonly caseId: number;
  readonly kind: CaseDecision;
  readonly reason: string | null;
  /** The version that the person saw; left out by doors that carry none. */
  readonly seenVersion?: number;
}

const actions: Readonly<Record<CaseDecision, AuditAction>> = {
  confirmation: "confirm-case",
  disagreement: "disagree-with-case",
  reopening: "reopen-case",
};

/**
 * Somebody confirms a determination as they saw it, disagrees with it, or takes that back. Nobody overrules it: what is
 * counted is what was determined. What time alone has changed is determined first, so that nobody confirms it unseen.
 * Refuses `not-found`, `stale-version`, `nothing-to-decide` for what closes itself or waits for the laboratory, and
 * `not-decided` for a decision that nobody made.
 */
export function decideCase(
  act: Act,
  { caseId, kind, reason, seenVersion }: DecideCase,
): Promise<{ caseId: number; version: number; state: CaseState }> {
  const by = recording(act);
  return act.store.tx(async (tx) => {
    const patient = await lockPatient(tx, by.facilityId, { caseId });
    await determineAgain(tx, by, { patientIds: [patient.id], cause: "determine-again" });
    const kept =
      (await determinationsOfCase(tx, by.facilityId, caseId)).at(-1) ??
      refuse("not-found", "There is no such record in this facility.");
    const { revision, state: before, outcome, summary } = kept;
    sameVersion({ version: revision }, seenVersion, { caseId, version: revision, state: before, outcome, summary });
    refuseUnfit(kept, kind);
    const said = caseSaid({ ...kept, closes: closesIn(kept) });
    const state = caseStateOf(said, { decision: kind, decided: kept.reported });
    const version = await addDecision(tx, by, kept, { kind, reason, state });
    // The remark of a confirmation is clinical text and stays with the decision; why one disagrees or reopens is a reason.
    const details = { caseId, number: kept.number, version, ...(kind === "confirmation" ? {} : { reason }) };
    await writeAudit(tx, by, { action: actions[kind], patientIds: [patient.id], details });
    return { caseId, version, state };
  });
}

function closesIn(kept: KeptDetermination): boolean {
  return determinationIn(kept)?.closes ?? true;
}

function refuseUnfit(kept: KeptDetermination, kind: CaseDecision): void {
  const { outcome, state, decision } = kept;
  const isDecided = decision !== null && decision !== "reopening";
  if (kind === "reopening" && !isDecided) refuse("not-decided", "It was never decided, or opened again since.");
  if (kind !== "reopening" && !needsPerson({ outcome, closes: closesIn(kept) }) && state !== "changed")
    refuse("nothing-to-decide", "It is closed automatically, or waits for the laboratory.");
}
