import { describe, expect, it } from "vitest";
import { assertAmount, assertCount } from "../../../src/domain/counting/amounts.ts";

describe("amounts", () => {
  it.each([0, 0.5, 212.12, 1e9])("lets the amount %d pass", (value) => {
    expect(() => assertAmount("days", value)).not.toThrow();
  });

  it.each([-1, -0.01, Number.NaN, Number.POSITIVE_INFINITY])("stops the amount %d by name", (value) => {
    expect(() => assertAmount("days", value)).toThrow("days must be zero or more");
  });

  it.each([0, 1, 500])("lets the count %d pass", (value) => {
    expect(() => assertCount("events", value)).not.toThrow();
  });

  it.each([-1, 1.5, Number.NaN, 2 ** 53])("stops the count %d by name", (value) => {
    expect(() => assertCount("events", value)).toThrow("events must be a whole number");
  });
});
