import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { intersectStretches, type Stretch, uniteStretches } from "../../../src/domain/days/stretch.ts";

function stretches(...pairs: [number, number][]): Stretch[] {
  return pairs.map(([start, end]) => ({ start, end }));
}

describe("united stretches", () => {
  it.each([
    { name: "nothing", list: [], united: [] },
    { name: "an empty stretch", list: [[3, 3]], united: [] },
    {
      name: "an empty stretch inside another",
      list: [
        [1, 5],
        [3, 3],
      ],
      united: [[1, 5]],
    },
    {
      name: "two apart, out of order",
      list: [
        [7, 9],
        [1, 2],
      ],
      united: [
        [1, 2],
        [7, 9],
      ],
    },
    {
      name: "two that touch",
      list: [
        [1, 3],
        [3, 5],
      ],
      united: [[1, 5]],
    },
    {
      name: "two that overlap",
      list: [
        [1, 4],
        [3, 5],
      ],
      united: [[1, 5]],
    },
    {
      name: "one within another",
      list: [
        [1, 9],
        [3, 5],
        [9, 10],
      ],
      united: [[1, 10]],
    },
    {
      name: "one that still lasts",
      list: [
        [4, Infinity],
        [1, 5],
      ],
      united: [[1, Infinity]],
    },
  ] as { name: string; list: [number, number][]; united: [number, number][] }[])("of $name", ({ list, united }) => {
    expect(uniteStretches(stretches(...list))).toEqual(stretches(...united));
  });

  it("leave the list that they came from as it was", () => {
    const list = stretches([5, 6], [1, 5]);
    const united = uniteStretches(list);
    expect(list).toEqual(stretches([5, 6], [1, 5]));
    expect(united).toEqual(stretches([1, 6]));
  });

  it("refuse a stretch that ends before it starts, or has no number", () => {
    expect(() => uniteStretches(stretches([2, 1]))).toThrow(Error);
    expect(() => uniteStretches(stretches([1, Number.NaN]))).toThrow(Error);
  });
});

describe("the intersection of stretches", () => {
  it.each([
    { name: "with nothing", a: [[1, 5]], b: [], both: [] },
    { name: "that only touch", a: [[1, 5]], b: [[5, 9]], both: [] },
    {
      name: "that overlap twice",
      a: [
        [1, 5],
        [7, 9],
      ],
      b: [[4, 8]],
      both: [
        [4, 5],
        [7, 8],
      ],
    },
    {
      name: "with touching pieces, as one",
      a: [
        [1, 3],
        [3, 6],
      ],
      b: [
        [2, 3],
        [3, 5],
      ],
      both: [[2, 5]],
    },
    { name: "that still last", a: [[1, Infinity]], b: [[4, Infinity]], both: [[4, Infinity]] },
  ] as { name: string; a: [number, number][]; b: [number, number][]; both: [number, number][] }[])(
    "$name",
    ({ a, b, both }) => {
      expect(intersectStretches(stretches(...a), stretches(...b))).toEqual(stretches(...both));
    },
  );
});

describe("random stretches (a failure prints their seed)", () => {
  const list = fc.array(
    fc.tuple(fc.nat(30), fc.nat(8)).map(([start, length]) => ({ start, end: start + length })),
    { maxLength: 8 },
  );
  const hours = Array.from({ length: 40 }, (_, hour) => hour);
  const covers = (some: Stretch[], hour: number) => some.some(({ start, end }) => start <= hour && hour < end);

  it("unite and intersect to the hours that are in one or in both, hour by hour", () => {
    fc.assert(
      fc.property(list, list, (a, b) => {
        const united = uniteStretches([...a, ...b]);
        const both = intersectStretches(a, b);
        for (const hour of hours) {
          expect(covers(united, hour)).toBe(covers(a, hour) || covers(b, hour));
          expect(covers(both, hour)).toBe(covers(a, hour) && covers(b, hour));
        }
        for (const result of [united, both]) {
          expect(result.every(({ start, end }) => start < end)).toBe(true);
          expect(result.every(({ start }, i) => i === 0 || (result[i - 1]?.end ?? start) < start)).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });
});
