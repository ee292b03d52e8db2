import { Problem, refuse } from "../../shared/problems.ts";
import { answerOf, keepAnswer, takeKey } from "../store/idempotency.ts";
import type { Tx, TxOptions } from "../store/store.ts";
import type { Act } from "./act.ts";

/** A creation as it was sent: the caller's key, and a digest of everything in it. */
export interface Creation {
  readonly key: string;
  readonly digest: string;
}

/** Thrown out of a transaction that has nothing to do any more; never leaves this file. */
class Repeated {
  readonly answer: string;
  constructor(answer: string) {
    this.answer = answer;
  }
}

/**
 * Carries out a creation once, however often it is sent, also twice at the same moment: the answer is kept in the very
 * transaction that creates, and a repeated creation gets it. `work` has to be one transaction whose result is its answer.
 * A refused creation leaves nothing and may be sent again. Transactions that are `apart` are not counted.
 * Refuses `idempotency-key-reused` when the same key comes with something else.
 */
export async function once<T extends object>(act: Act, creation: Creation, work: (act: Act) => Promise<T>): Promise<T> {
  let transactions = 0;
  const tx = <R>(inside: (tx: Tx) => Promise<R>, options?: TxOptions): Promise<R> => {
    if (options?.apart) return act.store.tx(inside, options);
    transactions += 1;
    if (transactions > 1) throw new Error("a creation has more than one transaction");
    return act.store.tx(async (opened) => {
      await refuseRepeated(opened, act, creation);
      const result = await inside(opened);
      await keepAnswer(opened, { personId: act.actor.personId, key: creation.key }, JSON.stringify(result));
      return result;
    }, options);
  };
  try {
    return await work({ ...act, store: { ...act.store, tx } });
  } catch (thrown) {
    if (thrown instanceof Repeated) return JSON.parse(thrown.answer) as T;
    // What the creation made may be why the repeated one is refused before its transaction: its ward is merged by now.
    const first = thrown instanceof Problem ? await firstAnswer(act, creation) : null;
    if (first === null) throw thrown;
    return JSON.parse(first) as T;
  }
}

async function firstAnswer({ store, actor }: Act, { key, digest }: Creation): Promise<string | null> {
  const first = await store.read((read) => answerOf(read, { personId: actor.personId, key }));
  return first?.requestHash === digest ? first.body : null;
}

async function refuseRepeated(tx: Tx, { actor, now }: Act, { key, digest }: Creation): Promise<void> {
  const first = await takeKey(tx, { personId: actor.personId, key }, { requestHash: digest, now });
  if (first === null) return;
  if (first.requestHash !== digest)
    refuse("idempotency-key-reused", "The key was used before, with other content.", { pointer: "" });
  throw new Repeated(first.body);
}
