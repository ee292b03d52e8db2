import { assertAmount } from "./amounts.ts";

/**
 * Pools parts (days, months, wards) by summing each of the named amounts; a pooled rate or ratio is then computed from
 * the sums and is never a mean of rates. No parts pool to zeros. Throws a plain Error for an amount that is negative
 * or not a number: a part whose count is missing must be left out by the caller, since missing is never zero.
 * Source: pooled totals of the Korean ICU surveillance reports 2018-2021.
 */
export function pool<Key extends string>(
  keys: readonly Key[],
  parts: readonly Readonly<Record<Key, number>>[],
): Record<Key, number> {
  const sums = keys.map((key) => [key, sumOf(key, parts)] as const);
  return Object.fromEntries(sums) as Record<Key, number>;
}

function sumOf<Key extends string>(key: Key, parts: readonly Readonly<Record<Key, number>>[]): number {
  let sum = 0;
  for (const part of parts) {
    assertAmount(key, part[key]);
    sum += part[key];
  }
  return sum;
}
