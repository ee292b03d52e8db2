import type { Fault } from "../problems.ts";
import { type Bounds, boundsAtAnyAge, boundsOf, type Quantity, type Range, usualPartWithdrawn } from "./quantities.ts";

/** A value as somebody charted it, with the pointer of its field. Nothing is found in one that was left out. */
export interface Charted {
  readonly quantity: Quantity;
  readonly value: number | null | undefined;
  readonly pointer: string;
}

/** What is known beside the values. */
export interface BoundsContext {
  /** null: nobody knows the age; then what is usual at any age is usual. */
  readonly ageDays: number | null;
  /** What was put into the balloon, for what came out of it. */
  readonly balloonMl?: number | null;
  /** Pointers of values that somebody has checked. */
  readonly confirmed: readonly string[];
}

/**
 * Faults of values that are slips: `out-of-bounds` for what cannot be, `unusual-value` for what is rare and was not
 * confirmed. The text names the bounds and never the value, which may be a patient's number in the wrong field.
 * Sizes and balloons are those of catheters through the urethra; other kinds have others.
 */
export function boundFaults(values: readonly Charted[], context: BoundsContext): Fault[] {
  return values.flatMap(({ quantity, value, pointer }) => {
    if (value === null || value === undefined) return [];
    const bounds = boundsOf(quantity, context.ageDays);
    if (!within(value, bounds.possible))
      return [{ code: "out-of-bounds", pointer, detail: `${bounds.words} is ${rangeText(bounds, "possible")}.` }];
    if (context.confirmed.includes(pointer)) return [];
    if (!within(value, bounds.usual)) return [{ code: "unusual-value", pointer, detail: usualText(bounds) }];
    return quantity === "balloonWithdrawnMl" ? partFaults({ value, pointer }, context.balloonMl ?? null) : [];
  });
}

function partFaults({ value, pointer }: { value: number; pointer: string }, balloonMl: number | null): Fault[] {
  if (balloonMl === null) return [];
  const part = { low: balloonMl * usualPartWithdrawn.low, high: balloonMl * usualPartWithdrawn.high };
  if (within(value, part)) return [];
  const { words } = boundsAtAnyAge.balloonWithdrawnMl;
  return [{ code: "unusual-value", pointer, detail: `${words} is usually between half and all of what was put in.` }];
}

/** Also false for what is no number. */
function within(value: number, { low, high }: Range): boolean {
  return value >= low && value <= high;
}

function usualText(bounds: Bounds): string {
  const unless = bounds.unless === undefined ? "" : `; ${bounds.unless}`;
  return `${bounds.words} is usually ${rangeText(bounds, "usual")}${unless}.`;
}

const numbers = new Intl.NumberFormat("en-US");

function rangeText(bounds: Bounds, which: "usual" | "possible"): string {
  const { low, high } = bounds[which];
  return `${numbers.format(low)} to ${numbers.format(high)}${bounds.unit === null ? "" : ` ${bounds.unit}`}`;
}
