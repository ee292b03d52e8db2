import { countWaiting, type Seal, sealedEntries, sealHash } from "../../store/audit-seal.ts";
import type { Store } from "../../store/store.ts";

/** What recomputing the chain found. */
export interface AuditVerification {
  readonly sealed: number;
  readonly waiting: number;
  readonly whole: boolean;
  readonly firstFault: { readonly number: number; readonly detail: string } | null;
  readonly head: Seal | null;
}

const pageSize = 1000;

/**
 * Recomputes the sealed chain of the audit trail from its first link. `known` is a link that was written down elsewhere
 * at an earlier time: a chain that was cut off, or made anew, no longer has it.
 */
export async function verifyAudit(store: Store, known: Seal | null = null): Promise<AuditVerification> {
  const waiting = await store.read((read) => countWaiting(read));
  let head: Seal | null = null;
  let firstFault: AuditVerification["firstFault"] = null;
  let knownFound = known === null;
  for (;;) {
    const after: number = head?.number ?? 0;
    const page = await store.read((read) => sealedEntries(read, after, pageSize));
    for (const entry of page) {
      firstFault ??= faultOf(head, entry.seal, sealHash(head, entry));
      if (known?.number === entry.seal.number) knownFound = known.hash === entry.seal.hash;
      head = entry.seal;
    }
    if (page.length < pageSize) break;
  }
  if (!knownFound && known)
    firstFault ??= {
      number: known.number,
      detail: "The chain does not have the link that was written down elsewhere.",
    };
  return { sealed: head?.number ?? 0, waiting, whole: firstFault === null, firstFault, head };
}

function faultOf(before: Seal | null, seal: Seal, expected: string): AuditVerification["firstFault"] {
  const number = (before?.number ?? 0) + 1;
  if (seal.number !== number) return { number, detail: "This entry is missing." };
  return seal.hash === expected ? null : { number, detail: "This entry, or one before it, is not what was sealed." };
}
