import { expect } from "vitest";

/** Expects a printed figure: within half a unit in the last printed place, and the error of a binary fraction. */
export function expectPrinted(value: number | null, printed: number, decimals: number): void {
  expect(value).not.toBeNull();
  expect(Math.abs(Number(value) - printed)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
}
