import type { Instant } from "../domain/days/day-number.ts";
import { insertRows } from "./bulk.ts";
import { rowsOf } from "./columns.ts";
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

const table = {
  table: "idempotency_key",
  columns: { person_id: "int", key: "text", request_hash: "text", created_at: "instant" },
} as const;

/**
 * Takes this person's key for a creation: null when it is ours, else the first answer. When the same creation is in
 * flight elsewhere this waits for it: it either leaves its answer, or fails and leaves the key to us.
 */
export async function takeKey(
  tx: Tx,
  { personId, key }: KeyOf,
  { requestHash, now }: { requestHash: string; now: Instant },
): Promise<FirstAnswer | null> {
  const taken = await insertRows(
    tx,
    table,
    [[personId, key, requestHash, now]],
    "ON CONFLICT (person_id, key) DO NOTHING",
  );
  if (taken === 1) return null;
  const first = await answerOf(tx, { personId, key });
  if (first === null) throw new Error("a taken key is gone inside its transaction");
  return first;
}

const answerTable = { table: "idempotency_key", columns: { requestHash: "text", body: "text?" } } as const;

/** The first answer to a creation with this person's key; null when there is none. */
export async function answerOf(read: Read, { personId, key }: KeyOf): Promise<FirstAnswer | null> {
  const [first] = await rowsOf(read, answerTable, "WHERE person_id = $1 AND key = $2", personId, key);
  return first ? { requestHash: first.requestHash, body: first.body ?? "" } : null;
}

/** Keeps an answer in the transaction that took the key and made it. */
export async function keepAnswer(tx: Tx, { personId, key }: KeyOf, body: string): Promise<void> {
  await tx.sql.run("UPDATE idempotency_key SET body = $1 WHERE person_id = $2 AND key = $3", body, personId, key);
}

/** Drops answers older than an instant; returns how many. */
export async function dropAnswers(tx: Tx, before: Instant): Promise<number> {
  const { count } = await tx.db.idempotencyKey.deleteMany({ where: { createdAt: { lt: new Date(before) } } });
  return count;
}
