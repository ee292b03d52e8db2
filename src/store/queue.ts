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

function turn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
