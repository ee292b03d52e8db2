import { describe, expect, it } from "vitest";
import { type Bounds, boundsAtAnyAge, boundsByAge, boundsOf } from "../../../shared/bounds/quantities.ts";

const everyBounds: [string, Bounds][] = [
  ...Object.entries(boundsAtAnyAge),
  ...Object.entries(boundsByAge).flatMap(([quantity, ages]) =>
    Object.entries(ages).map(([age, bounds]): [string, Bounds] => [`${quantity} ${age}`, bounds]),
  ),
];

describe.each(everyBounds)("the bounds of %s", (_, { usual, possible, words, source }) => {
  it("hold what is usual within what is possible, and say where they are from", () => {
    expect(possible.low).toBeLessThanOrEqual(usual.low);
    expect(usual.low).toBeLessThan(usual.high);
    expect(usual.high).toBeLessThan(possible.high);
    expect(words).toMatch(/^[A-Z]/);
    expect(source).not.toBe("");
  });
});

describe("the bounds of a quantity", () => {
  it.each([
    { ageDays: 0, words: "The size of an infant's catheter" },
    { ageDays: 364, words: "The size of an infant's catheter" },
    { ageDays: 365, words: "The size of a child's catheter" },
    { ageDays: 12 * 365 - 1, words: "The size of a child's catheter" },
    { ageDays: 12 * 365, words: "The size of an adult's catheter" },
  ])("at $ageDays days: $words", ({ ageDays, words }) => {
    expect(boundsOf("sizeFr", ageDays).words).toBe(words);
  });

  it("at an unknown age reach around those of every age", () => {
    expect(boundsOf("sizeFr", null)).toEqual({
      words: "The size of a catheter",
      unit: "Fr",
      usual: { low: 5, high: 16 },
      possible: { low: 3, high: 30 },
      source: `common practice; ${boundsByAge.sizeFr.adult.source}`,
    });
    expect(boundsOf("balloonMl", null)).toMatchObject({
      usual: { low: 1, high: 10 },
      possible: { low: 0.5, high: 100 },
    });
  });

  it("are the same at any age where age does not matter", () => {
    expect(boundsOf("attempts", null)).toBe(boundsAtAnyAge.attempts);
    expect(boundsOf("attempts", 0)).toBe(boundsAtAnyAge.attempts);
  });
});
