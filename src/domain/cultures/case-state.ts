import type { CaseDecision, CaseState } from "../../../shared/case-words.ts";
import type { DeterminationOutcome } from "../../../shared/culture-words.ts";
import type { Determination } from "../criteria/index.ts";

/** `gone`: the specimen or finding was voided. */
export type KeptOutcome = DeterminationOutcome | "gone";

/**
 * All that is reported of a determination, as one text: two that differ in it are another determination to people. The
 * derivation is not part of it: a further sign may only make it longer.
 */
export function reportedText(determination: Determination | null): string {
  if (determination === null) return "gone";
  const { editionId, outcome, event, repeatOf } = determination;
  const { criterion, dateOfEvent, onset, deviceAssociated, wardId } = event ?? {};
  const organisms = [...(event?.pathogens ?? []), ...(event?.addedPathogens ?? [])].sort();
  const secondary = [...(event?.secondaryBloodstream ?? [])].sort((a, b) => a - b);
  const said = [criterion, dateOfEvent, onset, deviceAssociated, wardId, organisms, secondary];
  return JSON.stringify([editionId, outcome, repeatOf?.id ?? null, ...said.map((one) => one ?? null)]);
}

/** Outcomes that end the work without anybody: nothing grew, or what grew cannot be used. */
const endsItself: readonly KeptOutcome[] = ["negative", "not-usable", "set-aside", "gone"];

/** Whether somebody has to look at it: everything that is positive, and what cannot be told. */
export function needsSomebody(outcome: KeptOutcome): boolean {
  return outcome !== "pending" && !endsItself.includes(outcome);
}

/**
 * How far the work is, of what is determined and what somebody decided last. A decision holds as long as what is reported
 * is what it was then; one about a culture that has since closed itself returns too, so that nobody misses it.
 */
export function caseStateOf(
  { outcome, reported }: { outcome: KeptOutcome; reported: string },
  { decision, decided }: { decision: CaseDecision | null; decided: string | null },
): CaseState {
  if (decision !== null && decision !== "reopening") {
    if (decided !== reported) return outcome === "pending" ? "pending" : "changed";
    return decision === "confirmation" ? "confirmed" : "disagreed";
  }
  if (outcome === "pending") return "pending";
  return needsSomebody(outcome) ? "waiting" : "closed";
}
