/**
 * The quantile of a list of numbers at a fraction of 0 to 1, linear between neighbors: the seventh of Hyndman and Fan's
 * definitions, which spreadsheets use. Throws a plain Error for an empty list.
 * Source: Hyndman and Fan, Am Stat 1996;50:361-365 (from memory).
 */
export function quantileOfList(values: readonly number[], fraction: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const place = (sorted.length - 1) * fraction;
  const [low, high] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
  if (low === undefined || high === undefined) throw new Error("an empty list has no quantile");
  return low + (place - Math.floor(place)) * (high - low);
}
