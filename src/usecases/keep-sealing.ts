import type { Claim, Store } from "../store/store.ts";
import { sealAudit } from "./seal-audit.ts";

/** The number under which the sealer claims its work: no import has it. */
const sealerClaim = -1;

/** Entries wait no longer than about this. */
const pauseMs = 400;

/**
 * Seals the audit trail again and again until it is stopped; several programs on one database leave it to one of them.
 * What goes wrong is told and tried again. `stop` resolves when the last round is over and all is sealed that was there.
 */
export function keepSealing(store: Store, onError: (error: unknown) => void): { stop(): Promise<void> } {
  const ended = new AbortController();
  const work = (async () => {
    let claim: Claim | null = null;
    while (!ended.signal.aborted) {
      claim = await round(store, claim, onError);
      await pause(ended.signal);
    }
    await (await round(store, claim, onError))?.release();
  })();
  return {
    stop: () => {
      ended.abort();
      return work;
    },
  };
}

/** One round of sealing; returns the claim with which the next one goes on. */
async function round(store: Store, held: Claim | null, onError: (error: unknown) => void): Promise<Claim | null> {
  let claim = held;
  try {
    claim ??= await store.claim(sealerClaim);
    if (claim) await sealAudit(store);
    return claim;
  } catch (error) {
    onError(error);
    // A connection that broke took the claim with it: it has to be asked for anew.
    await claim?.release();
    return null;
  }
}

function pause(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) return resolve();
    const timer = setTimeout(done, pauseMs);
    function done() {
      clearTimeout(timer);
      signal.removeEventListener("abort", done);
      resolve();
    }
    signal.addEventListener("abort", done);
  });
}
