import { createHash } from "node:crypto";
import type { Month } from "../../../shared/day.ts";
import { lockFacility } from "../../store/facilities.ts";
import { keepDocument, keptDocument } from "../../store/signed-months.ts";
import { type Act, recording } from "../act.ts";

/** A signature, and the kind of document. */
export interface SignedDocument {
  readonly month: Month;
  readonly number: number;
  readonly mediaType: string;
}

/**
 * The bytes of the document of a signature: those that are kept, or what `make` makes, kept from then on. It is made
 * outside of any transaction, because a browser takes seconds; of several made at once the first one is kept, and all
 * are answered with that one. Kept beside the signed text, which stays what was signed.
 */
export async function keepSignedDocument(
  act: Act,
  which: SignedDocument,
  make: () => Promise<Uint8Array>,
): Promise<Uint8Array> {
  const { facilityId } = act.actor;
  const kept = await act.store.read((read) => keptDocument(read, facilityId, which));
  if (kept) return kept.bytes;
  const bytes = await make();
  const digest = createHash("sha256").update(bytes).digest("hex");
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, facilityId);
    const first = await keptDocument(tx, facilityId, which);
    if (first) return first.bytes;
    await keepDocument(tx, by, { ...which, bytes, digest });
    return bytes;
  });
}
