/** Turns a value into a place of the drawing. */
export type Scale = (value: number) => number;

/** A straight scale from a range of values to a range of places; an empty range of values is put in the middle. */
export function linearScale(values: readonly [number, number], places: readonly [number, number]): Scale {
  const [low, high] = values;
  const [from, to] = places;
  if (low === high) return () => (from + to) / 2;
  return (value) => from + ((value - low) / (high - low)) * (to - from);
}

/** A logarithmic scale for ratios; values must be above zero. */
export function logScale(values: readonly [number, number], places: readonly [number, number]): Scale {
  const straight = linearScale([Math.log(values[0]), Math.log(values[1])], places);
  return (value) => straight(Math.log(value));
}

/** Round numbers from 0 to at least `most`, about as many steps as asked for; 0 and 1 when there is nothing. */
export function ticksTo(most: number, steps: number): number[] {
  if (!(most > 0)) return [0, 1];
  const raw = most / steps;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step =
    [1, 2, 2.5, 5, 10].map((factor) => factor * power).find((one) => one >= raw - power * 1e-9) ?? 10 * power;
  const count = Math.ceil(most / step - 1e-9);
  // Divided and not multiplied, so that 3 x 0.1 is written 0.3.
  return Array.from({ length: count + 1 }, (_, at) => Number((at * step).toPrecision(12)));
}

/** Round numbers within a range, about as many steps as asked for; the ends of the range are not among them as such. */
export function ticksWithin([low, high]: readonly [number, number], steps: number): number[] {
  const spread = ticksTo(high - low, steps);
  const step = spread[1] ?? 1;
  const first = Math.ceil(low / step - 1e-9);
  const count = Math.floor(high / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, at) => Number(((first + at) * step).toPrecision(12)));
}

/** The range of a logarithmic axis that holds two values and ends on ticks of it. */
export function logRange(low: number, high: number): [number, number] {
  const ticks = logTicks([low / 10, high * 10]);
  const from = ticks.findLast((tick) => tick < low) ?? low / 2;
  return [from, ticks.find((tick) => tick > high) ?? high * 2];
}

/** Ticks of a logarithmic axis: 1, 2 and 5 times the powers of ten that lie in the range. */
export function logTicks([low, high]: readonly [number, number]): number[] {
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
    for (const factor of [1, 2, 5]) {
      const tick = Number((factor * 10 ** power).toPrecision(12));
      if (tick >= low * (1 - 1e-9) && tick <= high * (1 + 1e-9)) ticks.push(tick);
    }
  }
  return ticks;
}
