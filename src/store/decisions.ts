import type { CaseDecision, CaseState } from "../../shared/case-words.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { daysCounted, type KeptDetermination } from "./determinations.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

/** What somebody did with a determination. */
export interface DecisionRow {
  readonly kind: CaseDecision;
  /** The determination that it is about, by its number. */
  readonly about: number;
  readonly reason: string | null;
  readonly decidedAt: Instant;
  readonly decidedBy: number;
}

/** The decisions about a case, oldest first. */
export async function decisionsOf(read: Read, caseId: number): Promise<DecisionRow[]> {
  const rows = await read.db.decision.findMany({ where: { caseId }, orderBy: { number: "asc" } });
  return rows.map(({ kind, about, reason, decidedAt, decidedBy }) => ({
    ...{ kind: kind as CaseDecision, about, reason, decidedBy },
    decidedAt: decidedAt.getTime(),
  }));
}

/** Adds a decision about a determination that is in force; returns the revision that the case has then. */
export async function addDecision(
  tx: Tx,
  by: Recording,
  about: KeptDetermination,
  { kind, reason, state }: { kind: CaseDecision; reason: string | null; state: CaseState },
): Promise<number> {
  touchDays(tx, daysCounted(about));
  const { caseId, number, revision } = about;
  const earlier = await tx.db.decision.count({ where: { caseId } });
  const written = { decidedAt: new Date(by.now), decidedBy: by.personId };
  await tx.db.decision.create({ data: { caseId, number: earlier + 1, kind, about: number, reason, ...written } });
  await tx.db.determination.update({
    where: { caseId_number: { caseId, number } },
    data: { state, revision: revision + 1, decision: kind, decided: about.reported },
  });
  return revision + 1;
}
