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

/** What a case state is worked out from. */
export interface Closing {
  readonly outcome: KeptOutcome;
  /** No growth, unusable or withdrawn, certain whatever is not known; or voided. */
  readonly closes: boolean;
}

/** Whether a person has to look at it: everything that is not certain to be of no use, once the laboratory reported. */
export function needsPerson({ outcome, closes }: Closing): boolean {
  return outcome !== "pending" && !closes;
}

/** What a case state is worked out from, with what is reported and whether any unit under surveillance could have it. */
interface CaseSaid extends Closing {
  readonly reported: string;
  readonly isOutOfScope: boolean;
}

/**
 * How far the work is, of what is determined and what a person decided last. A decision holds as long as what is reported
 * is what it was then; one about a culture that is since closed automatically returns too, so that it is seen. A culture
 * that is out of scope is no work, neither before a decision nor when the record changes after one.
 */
export function caseStateOf(
  { reported, isOutOfScope, ...closing }: CaseSaid,
  { decision, decided }: { decision: CaseDecision | null; decided: string | null },
): CaseState {
  const isDecided = decision !== null && decision !== "reopening";
  if (isDecided && decided === reported) return decision === "confirmation" ? "confirmed" : "disagreed";
  const isPending = closing.outcome === "pending";
  if (!isDecided && !isPending && !needsPerson(closing)) return "closed";
  if (isOutOfScope) return "out-of-scope";
  if (isPending) return "pending";
  return isDecided ? "changed" : "waiting";
}
