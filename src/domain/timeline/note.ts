import type { ItemState, NoteKind, ReviewOutcome } from "../../../shared/catheter-words.ts";
import type { Instant } from "../days/day-number.ts";
import type { Entry } from "./timeline.ts";

/** What somebody did or saw at a catheter: a review, a confirmation, a care check or an amount of urine. */
export interface CatheterNote extends Entry {
  readonly catheterId: number;
  readonly kind: NoteKind;
  /** When it happened. */
  readonly at: Instant;
  /** When it was first written down, and by whom: late charting keeps both instants. */
  readonly writtenAt: Instant;
  readonly writtenBy: number;
  /** Of a review. */
  readonly outcome: ReviewOutcome | null;
  /** Of a review that keeps the catheter. */
  readonly indication: string | null;
  /** Of a care check, by item of the policy's bundle; what is not there was not recorded. */
  readonly items: Readonly<Record<string, ItemState>> | null;
  /** Of a urine output, in milliliters. */
  readonly amountMl: number | null;
  readonly remark: string | null;
}

/**
 * The order in which notes tell what happened: of one instant, what was written later comes later and holds. Numbers
 * alone do not tell that, because each program hands out its own.
 */
export function byTime(
  a: Pick<CatheterNote, "at" | "writtenAt" | "id">,
  b: Pick<CatheterNote, "at" | "writtenAt" | "id">,
): number {
  return a.at - b.at || a.writtenAt - b.writtenAt || a.id - b.id;
}
