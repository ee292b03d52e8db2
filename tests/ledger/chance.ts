import fc from "fast-check";

/** Draws that are the same for the same seed. */
export interface Chance {
  /** A whole number from 0 to below `end`. */
  below(end: number): number;
  /** True so many times in a hundred. */
  percent(share: number): boolean;
  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T;
  /** One of a list, or undefined when it is empty. */
  maybe<T>(list: readonly T[]): T | undefined;
}

/** More than any edit needs; drawing more is a fault of the generator. */
const drawsOfAnEdit = 120;

/** Draws from fast-check's generator. */
export function chanceOf(seed: number, drawsAhead = drawsOfAnEdit): Chance {
  const size = 2 ** 30;
  const draws = fc.sample(fc.noBias(fc.nat(size - 1)), { seed, numRuns: drawsAhead });
  const next = () => {
    const draw = draws.pop();
    if (draw === undefined) throw new Error("no draws are left");
    return draw;
  };
  const below = (end: number) => Math.floor((next() / size) * end);
  const pick = <T>(list: readonly T[]): T => {
    if (list.length === 0) throw new Error("nothing to pick from");
    return list[below(list.length)] as T;
  };
  return {
    below,
    pick,
    percent: (share) => below(100) < share,
    maybe: (list) => (list.length === 0 ? undefined : pick(list)),
  };
}
