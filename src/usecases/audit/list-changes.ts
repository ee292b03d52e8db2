import type { listChanges as endpoint } from "../../../shared/api/audit.ts";
import { type AuditAction, changingActions } from "../../../shared/audit-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { lastSeal, type SealedPart, sealedEntries } from "../../store/audit-seal.ts";
import { isWaiting } from "../../store/audit-search.ts";
import { survivorIdsOf } from "../../store/patients.ts";
import { patientsInReach } from "../../store/patients-in-reach.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { inReachSince } from "../record/find-record.ts";

type Changes = OutputOf<typeof endpoint>;

const usualLimit = 50;

/** How many entries one answer looks through at most: most of them are views, which change nothing. */
const lookedThrough = 1000;

/**
 * What changed in patients' records since a cursor, for the patients within reach. The cursor is the place in the sealed
 * chain, which is given after the commit: so nothing that was written meanwhile can be left out. Nobody waits
 * here for what has no place yet. Without a cursor nothing is listed, and `next` is the end of the chain as it is.
 */
export async function listChanges(
  act: Act,
  { after: asked, limit = usualLimit }: { after?: number | undefined; limit?: number | undefined },
  { wardIds }: Reach,
): Promise<Changes> {
  const { store, actor, now } = act;
  return store.read(async (read) => {
    const after = asked ?? (await lastSeal(read))?.number ?? 0;
    const sealed = asked === undefined ? [] : await sealedEntries(read, after, lookedThrough);
    const own = sealed.filter(isChange(actor.facilityId));
    const survivors = await survivorIdsOf(read, [...new Set(own.flatMap(({ patientIds }) => patientIds))]);
    const since = inReachSince(now);
    const reached =
      wardIds &&
      new Set(await patientsInReach(read, actor.facilityId, { patientIds: [...survivors.values()], wardIds, since }));
    const inReach = (patientId: number) => reached?.has(survivors.get(patientId) ?? 0) ?? true;
    const changes = own.flatMap(({ seal, at, personId, action, details, patientIds }) => {
      const seen = patientIds.filter(inReach);
      if (seen.length === 0) return [];
      const entries = numbersIn(JSON.parse(details) as Record<string, unknown>);
      return [
        { cursor: seal.number, at: at.getTime(), personId, action: action as AuditAction, patientIds: seen, entries },
      ];
    });
    const waiting = await isWaiting(read, actor.facilityId, changingActions);
    const last = changes[limit - 1];
    if (last && changes.length > limit)
      return { changes: changes.slice(0, limit), next: last.cursor, more: true, waiting };
    return { changes, next: sealed.at(-1)?.seal.number ?? after, more: sealed.length === lookedThrough, waiting };
  });
}

function isChange(facilityId: number): (entry: SealedPart) => boolean {
  const actions: readonly string[] = changingActions;
  return (entry) => entry.facilityId === facilityId && entry.patientIds.length > 0 && actions.includes(entry.action);
}

/** Numbers of entries; a reason that somebody typed is for those who read the record. */
function numbersIn(details: Record<string, unknown>): Record<string, number> {
  const numbers = Object.entries(details).filter(
    ([name, value]) => Number.isInteger(value) && /Id$|^version$/.test(name),
  );
  return Object.fromEntries(numbers) as Record<string, number>;
}
