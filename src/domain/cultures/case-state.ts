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

/**
 * How far the work is, of what is determined and what somebody decided last. A decision holds as long as what is reported
 * is what it was then; one about a culture that is since closed automatically returns too, so that it is seen.
 */
export function caseStateOf(
  { reported, ...closing }: Closing & { readonly reported: string },
  { decision, decided }: { decision: CaseDecision | null; decided: string | null },
): CaseState {
  if (decision !== null && decision !== "reopening") {
    if (decided !== reported) return closing.outcome === "pending" ? "pending" : "changed";
    return decision === "confirmation" ? "confirmed" : "disagreed";
  }
  if (closing.outcome === "pending") return "pending";
  return needsPerson(closing) ? "waiting" : "closed";
}
