import { describe, expect, it } from "vitest";
import { inChunks } from "../../src/store/in-chunks.ts";

describe("asking about many values", () => {
  it("asks some at a time, one after another, and keeps the order", async () => {
    const values = Array.from({ length: 1201 }, (_, i) => i);
    const asked: number[] = [];
    let running = 0;
    const rows = await inChunks(values, async (chunk) => {
      expect(++running).toBe(1);
      asked.push(chunk.length);
      await Promise.resolve();
      running--;
      return chunk.map((value) => `row ${value}`);
    });
    expect(Math.max(...asked)).toBeLessThan(998);
    expect(asked.reduce((sum, n) => sum + n, 0)).toBe(1201);
    expect(rows).toEqual(values.map((value) => `row ${value}`));
  });

  it("asks nothing about nothing", async () => {
    expect(await inChunks([], () => Promise.reject(new Error("asked")))).toEqual([]);
  });
});
