import { describe, expect, it } from "vitest";
import { idBlocks } from "../../src/store/id-blocks.ts";

/** Blocks from a counter that answers late, as a database does; tells which sizes were taken. */
function blocksFrom(first: number): { ids: ReturnType<typeof idBlocks>; taken: number[] } {
  let next = first;
  const taken: number[] = [];
  const ids = idBlocks(async (size) => {
    const start = next;
    next += size;
    taken.push(size);
    await new Promise((resolve) => setTimeout(resolve, 2));
    return start;
  });
  return { ids, taken };
}

async function draw(ids: ReturnType<typeof idBlocks>, count: number): Promise<number[]> {
  const newId = await ids.reserve(count);
  return Array.from({ length: count }, () => newId());
}

describe("ids", () => {
  it("are drawn from one block as long as it lasts", async () => {
    const { ids, taken } = blocksFrom(1);
    expect(await draw(ids, 3)).toEqual([1, 2, 3]);
    expect(await draw(ids, 2)).toEqual([4, 5]);
    expect(taken).toEqual([1000]);
  });

  it("are never handed out twice, also when many reserve at once", async () => {
    const { ids } = blocksFrom(1);
    const counts = Array.from({ length: 60 }, (_, i) => 1 + ((i * 37) % 90));
    const drawn = (await Promise.all(counts.map((count) => draw(ids, count)))).flat();
    expect(drawn).toHaveLength(counts.reduce((sum, count) => sum + count, 0));
    expect(new Set(drawn).size).toBe(drawn.length);
  });

  it("may be reserved in greater number than a block holds", async () => {
    const { ids, taken } = blocksFrom(1);
    const drawn = await draw(ids, 2500);
    expect(taken).toEqual([2500]);
    expect(drawn.at(-1)).toBe(2500);
  });

  it("are lost, not used again, when they were reserved and not drawn", async () => {
    const { ids } = blocksFrom(1);
    await ids.reserve(10);
    expect(await draw(ids, 1)).toEqual([11]);
  });

  it("cannot be drawn beyond what was reserved", async () => {
    const { ids } = blocksFrom(1);
    const newId = await ids.reserve(1);
    newId();
    expect(() => newId()).toThrow("more than the 1 ids");
  });
});
