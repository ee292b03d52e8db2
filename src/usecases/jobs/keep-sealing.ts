import type { Instant } from "../../domain/days/day-number.ts";
import type { Claim, Store } from "../../store/store.ts";
import { sealAudit } from "../audit/seal-audit.ts";
import { pause } from "../pause.ts";
import { dropOldAnswers } from "./drop-old-answers.ts";

/** The number under which the sealer claims its work: no import has it. */
const sealerClaim = -1;

/** Entries wait no longer than about this. */
const pauseMs = 400;

/** Old answers of creations are looked for no more often than this. */
const dropEveryMs = 3_600_000;

export interface Keeping {
  readonly clock: () => Instant;
  readonly onError: (error: unknown) => void;
}

/**
 * Seals the audit trail again and again until it is stopped, and drops old answers of creations about once an hour;
 * several programs on one database leave it to one of them. What goes wrong is told and tried again. `stop` resolves when
 * the last round is over and all is sealed that was there.
 */
export function keepSealing(store: Store, { clock, onError }: Keeping): { stop(): Promise<void> } {
  const ended = new AbortController();
  const tasks = tasksOf(store, clock);
  const work = (async () => {
    let claim: Claim | null = null;
    while (!ended.signal.aborted) {
      claim = await round(store, claim, { tasks, onError });
      await pause(pauseMs, ended.signal);
    }
    await (await round(store, claim, { tasks, onError }))?.release();
  })();
  return {
    stop: () => {
      ended.abort();
      return work;
    },
  };
}

/** What a round does. */
function tasksOf(store: Store, clock: () => Instant): () => Promise<void> {
  let droppedAt = Number.NEGATIVE_INFINITY;
  return async () => {
    await sealAudit(store);
    const now = clock();
    // A clock that was set back must not stop the dropping.
    if (Math.abs(now - droppedAt) < dropEveryMs) return;
    await dropOldAnswers(store, now);
    droppedAt = now;
  };
}

/** One round; returns the claim with which the next one goes on. */
async function round(
  store: Store,
  held: Claim | null,
  { tasks, onError }: Pick<Keeping, "onError"> & { tasks: () => Promise<void> },
): Promise<Claim | null> {
  let claim = held;
  try {
    claim ??= await store.claim(sealerClaim);
    if (claim) await tasks();
    return claim;
  } catch (error) {
    onError(error);
    // A connection that broke took the claim with it: it has to be asked for anew.
    await claim?.release();
    return null;
  }
}
