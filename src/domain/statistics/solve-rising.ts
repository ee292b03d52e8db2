/** A function of t that rises from below zero to above it, with its slope, as one call. */
export type Rising = (t: number) => { readonly value: number; readonly slope: number };

const mostSteps = 200;

/**
 * The t at which a rising function is zero.
 * Method: Newton's steps, held inside the bracket found so far; where a step would leave it or the function gives no
 * usable slope, the middle of the bracket, or twice as far out while there is no other side yet.
 * Throws a plain Error (a bug of the caller) when 200 steps do not settle it.
 * Error: a step under 1e-9 of the larger of 1 and |t| ends it, whose successor would be of the order of its square.
 */
export function solveRising(rising: Rising, start: number): number {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let t = start;
  let reach = 1;
  for (let step = 0; step < mostSteps; step++) {
    const { value, slope } = rising(t);
    if (value === 0) return t;
    if (value < 0) low = t;
    else high = t;
    let next = t - value / slope;
    const isUsable = Number.isFinite(next) && next > low && next < high && Math.abs(next - t) <= 8 * reach;
    if (isUsable && Math.abs(next - t) < 1e-9 * Math.max(1, Math.abs(t))) return next;
    if (!isUsable) {
      if (Number.isFinite(low) && Number.isFinite(high)) next = (low + high) / 2;
      else next = value < 0 ? t + reach : t - reach;
      reach *= 2;
      if (Math.abs(next - t) < 1e-15 * Math.max(1, Math.abs(t))) return next;
    }
    t = next;
  }
  throw new Error(`no zero was found from ${start} on in ${mostSteps} steps`);
}
