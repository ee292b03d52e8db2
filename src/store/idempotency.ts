import type { Instant } from "../domain/days/day-number.ts";
import type { Read, Tx } from "./store.ts";

/** The first answer to a creation. */
export interface FirstAnswer {
  readonly requestHash: string;
  /** JSON. */
  readonly body: string;
}

interface KeyOf {
  readonly personId: number;
  readonly key: string;
}

/** What was answered to this person's creation of that key; null when it is new. */
export async function firstAnswer(read: Read, { personId, key }: KeyOf): Promise<FirstAnswer | null> {
  const row = await read.db.idempotencyKey.findUnique({ where: { personId_key: { personId, key } } });
  return row?.body == null ? null : { requestHash: row.requestHash, body: row.body };
}

/**
 * Keeps an answer in the transaction that made it. When the same creation is in flight twice, one of the two fails here
 * on the unique key, is run again by the store, and finds the first answer.
 */
export async function keepAnswer(tx: Tx, of: KeyOf & FirstAnswer & { now: Instant }): Promise<void> {
  const { personId, key, requestHash, body, now } = of;
  await tx.db.idempotencyKey.create({
    data: { personId, key, requestHash, body, createdAt: new Date(now) },
    select: { key: true },
  });
}

/** Drops answers older than an instant; returns how many. */
export async function dropAnswers(tx: Tx, before: Instant): Promise<number> {
  const { count } = await tx.db.idempotencyKey.deleteMany({ where: { createdAt: { lt: new Date(before) } } });
  return count;
}
