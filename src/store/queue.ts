/**
 * Runs pieces of work one after another, in the order in which they came. SQLite has one writer: waiting here is fair
 * and has no time limit, waiting inside the driver has one.
 */
export function oneAtATime(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return <T>(work: () => Promise<T>): Promise<T> => {
    const mine = last.then(work, work);
    last = mine.catch(() => undefined);
    return mine;
  };
}
