/**
 * Heights for labels beside the ends of lines, so that none covers another: each as near to its own height as the order
 * allows, `gap` apart, and inside `low` to `high` where they fit. In the order given.
 */
export function spreadLabels(
  heights: readonly number[],
  { gap, low, high }: { gap: number; low: number; high: number },
): number[] {
  const order = heights.map((height, at) => ({ height, at })).toSorted((a, b) => a.height - b.height);
  let floor = low;
  const placed = order.map(({ height, at }) => {
    const y = Math.max(height, floor);
    floor = y + gap;
    return { y, at };
  });
  let ceiling = high;
  for (const one of placed.toReversed()) {
    one.y = Math.min(one.y, ceiling);
    ceiling = one.y - gap;
  }
  return placed.toSorted((a, b) => a.at - b.at).map(({ y }) => y);
}
