import { lastSeal, type Seal, sealHash, storeSeals, waitingEntries } from "../../store/audit-seal.ts";
import type { Store } from "../../store/store.ts";

/** Entries that one transaction seals at most. */
const batch = 500;

/**
 * It numbers nothing with ids, which would run out if every look took some. One state throughout: should somebody else
 * seal meanwhile, after a claim that broke unseen, the database gives up one of the two, and no seal is ever rewritten.
 */
const sealing = { ids: 0, snapshot: true } as const;

/**
 * Seals the entries of the audit trail that wait: chains them by hash in the order of their ids. Only what was committed
 * is seen here, so nobody who writes waits for the chain. Returns how many were sealed. One at a time may do this.
 */
export async function sealAudit(store: Store): Promise<number> {
  let sealed = 0;
  for (;;) {
    const count = await store.tx(async (tx) => {
      const waiting = await waitingEntries(tx, batch);
      if (waiting.length === 0) return 0;
      let before = await lastSeal(tx);
      const seals = waiting.map((entry): Seal & { id: string } => {
        before = { number: (before?.number ?? 0) + 1, hash: sealHash(before, entry) };
        return { ...before, id: entry.id };
      });
      await storeSeals(tx, seals);
      return waiting.length;
    }, sealing);
    sealed += count;
    if (count < batch) return sealed;
  }
}
