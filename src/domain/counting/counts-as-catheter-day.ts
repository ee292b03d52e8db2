import type { CatheterKind } from "../../../shared/vocabulary.ts";

/**
 * Whether a catheter of this kind is an indwelling urinary catheter: through the urethra, left in place, draining to a
 * bag. Use for irrigation still counts. The other kinds are recorded and never counted; beside a urethral one the day
 * counts once, for the urethral one.
 * Source: CDC Patient Safety Component Manual, chapter 7 (key terms), read in the national adaptation of Taiwan.
 */
export function countsAsIndwelling(kind: CatheterKind): boolean {
  return kind === "indwelling-urethral";
}
