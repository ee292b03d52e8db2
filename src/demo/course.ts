import type { ReviewOutcome } from "../../shared/catheter-words.ts";
import type { RemovalRecord } from "../../shared/records.ts";
import type { CatheterKind } from "../../shared/vocabulary.ts";
import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import type { Leg } from "./patient-path.ts";

/** An invented patient's stay with everything that happened in it. */
export interface Course {
  readonly stay: string;
  readonly patient: string;
  readonly legs: readonly Leg[];
  readonly catheters: readonly DemoCatheter[];
  /** Left out while the course is drawn; null: nobody recorded it. */
  readonly bornOn?: DayNumber | null;
  readonly sex?: "female" | "male" | null;
}

export interface DemoCatheter {
  readonly number: string;
  readonly kind: CatheterKind;
  /** null: found in place on arrival. */
  readonly inserted: Instant | null;
  /** From when it was in place within the stay, and until when really: a removal can be forgotten. */
  readonly start: Instant;
  readonly gone: Instant;
  /** The removal as it was recorded. */
  readonly removed: Instant | null;
  readonly reason: NonNullable<RemovalRecord["reason"]> | null;
  readonly indication: string | null;
  readonly sizeFr: number;
  readonly reviews: readonly DemoReview[];
  /** Nobody looks after it: no care check and no confirmation. */
  readonly unseen?: boolean;
}

export interface DemoReview {
  readonly at: Instant;
  readonly outcome: ReviewOutcome;
  readonly indication: string | null;
  readonly note: string | null;
  readonly written: Instant;
}

/** A catheter of usual make, from `start` on, still in place. */
export function catheterFrom(start: Instant, said: Pick<DemoCatheter, "number"> & Partial<DemoCatheter>): DemoCatheter {
  return {
    ...{ kind: "indwelling-urethral", inserted: start, start, gone: Number.POSITIVE_INFINITY, removed: null },
    ...{ reason: null, indication: "retention-or-obstruction", sizeFr: 14, reviews: [] },
    ...said,
  };
}

/** The leg of a course at an instant; undefined off the wards. */
export function legAt(legs: readonly Leg[], at: Instant): Leg | undefined {
  return legs.find(({ from, to }) => from <= at && at < to);
}
