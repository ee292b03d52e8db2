import type { PolicyBody } from "../../../shared/policy.ts";
import type { Instant } from "../days/day-number.ts";
import type { CatheterPresence } from "./catheter-presence.ts";

/** Why a catheter is in place, by what was written last. */
export interface IndicationInForce {
  readonly code: string;
  /** Whether the policy accepts it. */
  readonly accepted: boolean;
  /** The review that gave it; null when it was given with the insertion. */
  readonly noteId: number | null;
}

/**
 * The indication that was recorded last by an instant: with the insertion, or by a review that kept the catheter. Reviews
 * that ask or remove leave it as it was. Null when none was recorded. That the indication of each day is documented:
 * AHRQ, Toolkit for reducing CAUTI in hospitals, appendix I.
 */
export function indicationInForce(
  { catheter, reviews }: Pick<CatheterPresence, "catheter" | "reviews">,
  at: Instant,
  policy: Pick<PolicyBody, "indications">,
): IndicationInForce | null {
  const kept = reviews.findLast((review) => review.at <= at && review.outcome === "keep" && review.indication !== null);
  const code = kept?.indication ?? catheter.indication;
  if (code === null) return null;
  const accepted = policy.indications.some((listed) => listed.code === code);
  return { code, accepted, noteId: kept?.id ?? null };
}
