/**
 * Runs pieces of work one after another, in the order in which they came. SQLite has one writer: waiting here is fair
 * and has no time limit, waiting inside the driver has one.
 *
 * Between two pieces the event loop turns. SQLite answers without ever waiting, so that all who stand in the queue would
 * else be served in one turn, and the loop takes up one new connection in a turn: who connects when many are there
 * would wait until the last of them has gone.
 */
export function oneAtATime(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return <T>(work: () => Promise<T>): Promise<T> => {
    const mine = last.then(work);
    last = mine.then(turn, turn);
    return mine;
  };
}

/**
 * Does a piece of work together with those that came while an earlier lot was done, at most `most` at once. Each resolves
 * when its lot is done; when that fails, each of the lot fails.
 */
export function together<P>(work: (pieces: readonly P[]) => Promise<void>, most: number): (piece: P) => Promise<void> {
  let waiting: { readonly piece: P; readonly done: (lot: Promise<void>) => void }[] = [];
  const line = oneAtATime();
  const next = async () => {
    const lot = waiting.slice(0, most);
    waiting = waiting.slice(most);
    if (lot.length === 0) return;
    const result = work(lot.map(({ piece }) => piece));
    for (const { done } of lot) done(result);
    await result;
  };
  return (piece) =>
    new Promise((resolve, reject) => {
      waiting.push({ piece, done: (lot) => lot.then(resolve, reject) });
      line(next).catch(reject);
    });
}

/** Lets the event loop turn. */
export function turn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
