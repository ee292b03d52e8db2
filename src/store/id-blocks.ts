/** Ids are handed out in blocks, so that entries can be numbered before they are stored, many at a time. */
const blockSize = 1000;

export interface IdBlocks {
  /** Makes sure that `count` ids can be drawn. */
  reserve(count: number): Promise<() => number>;
}

/**
 * Draws ids from blocks that `takeBlock(size)` reserves in the database, in a transaction of its own: an id that was
 * drawn and not used is lost, never used twice.
 */
export function idBlocks(takeBlock: (size: number) => Promise<number>): IdBlocks {
  let next = 0;
  let end = 0;
  return {
    async reserve(count) {
      if (end - next < count) {
        const size = Math.max(count, blockSize);
        const first = await takeBlock(size);
        next = first;
        end = first + size;
      }
      let mine = next;
      next += count;
      const limit = next;
      return () => {
        if (mine >= limit) throw new Error(`a transaction drew more than the ${count} ids that it asked for`);
        return mine++;
      };
    },
  };
}
