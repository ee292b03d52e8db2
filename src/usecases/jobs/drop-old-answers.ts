import type { Instant } from "../../domain/days/day-number.ts";
import { dropAnswers } from "../../store/idempotency.ts";
import type { Store } from "../../store/store.ts";

/** How long a creation that is sent again gets its first answer: longer than a device stays offline. Common practice. */
const keptMs = 30 * 24 * 3_600_000;

/** Drops the answers of creations that nobody sends again any more; returns how many. */
export function dropOldAnswers(store: Store, now: Instant): Promise<number> {
  return store.tx((tx) => dropAnswers(tx, now - keptMs));
}
