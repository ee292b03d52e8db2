import { readFileSync } from "node:fs";
import { expect } from "vitest";
import type { z } from "zod";
import type { Ratio } from "../../src/domain/counting/ratio.ts";

/** One file of `data/statistics/`, in the shape that the test expects; anything else fails the test. */
export function readStatistics<T>(file: string, shape: z.ZodType<T>): T {
  return shape.parse(JSON.parse(readFileSync(new URL(`./data/statistics/${file}`, import.meta.url), "utf8")));
}

/** The value of a figure that must be there. */
export function figureOf(figure: Ratio): number {
  if (figure.value === null) throw new Error(`no value: ${figure.reason}`);
  return figure.value;
}

/** Expects a figure to 1e-9, relative; a reference of 0 to 1e-12, absolute. */
export function expectSame(ours: number | null | undefined, reference: number, within = 1e-9): void {
  expect(Number.isFinite(ours), `${ours} is no number`).toBe(true);
  const off = reference === 0 ? Math.abs(Number(ours)) * 1e3 : Math.abs(Number(ours) / reference - 1);
  expect(off, `${ours} against ${reference}`).toBeLessThanOrEqual(within);
}
