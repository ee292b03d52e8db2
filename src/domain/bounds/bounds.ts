import type { Fault } from "../../../shared/problems.ts";

/** The lowest and the highest value, both included. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** What is usual of a quantity and what is possible at all. */
export interface Bounds {
  /** Outside of it somebody has to look twice, and can then say that the value is right. */
  readonly usual: Range;
  /** Outside of it the value is a slip. Wide, because a true value must never be refused. */
  readonly possible: Range;
  readonly unit: string;
  /** What is measured, as a sentence begins: `The size`. */
  readonly words: string;
  /** Document, or "common practice" for what everybody does and nobody wrote down. */
  readonly source: string;
}

/** Ages at which other sizes and balloons are usual. */
export type AgeGroup = "infant" | "child" | "adult";

/** An infant is in the first year of life; a child is under 12, from when sizes of adults are in use (common practice). */
const infantUnderDays = 365;
const childUnderDays = 12 * 365;

const sizes = "nursing handbooks on catheter sizes: adults 12 to 16, more with clots, children 6 to 10; 1 Fr is 1/3 mm";
const balloons = "EAUN guideline on indwelling catheterization 2012 and 2024 (from memory)";
const common = "common practice";

function bounds(words: string, unit: string, source: string, of: { usual: Range; possible: Range }): Bounds {
  return { words, unit, source, ...of };
}

const size = (source: string, usual: Range, possible: Range) =>
  bounds("The size", "Fr", source, { usual, possible });
const balloon = (source: string, usual: Range, possible: Range) =>
  bounds("The balloon volume", "mL", source, { usual, possible });

/** Bounds that change with age. Infants' are common practice. */
export const boundsByAge: Readonly<Record<"sizeFr" | "balloonMl", Readonly<Record<AgeGroup, Bounds>>>> = {
  sizeFr: {
    infant: size(common, { low: 5, high: 8 }, { low: 3, high: 14 }),
    child: size(sizes, { low: 6, high: 10 }, { low: 3, high: 24 }),
    adult: size(sizes, { low: 12, high: 16 }, { low: 3, high: 30 }),
  },
  balloonMl: {
    infant: balloon(common, { low: 1, high: 3 }, { low: 0.5, high: 15 }),
    child: balloon(balloons, { low: 3, high: 5 }, { low: 0.5, high: 50 }),
    adult: balloon(balloons, { low: 5, high: 10 }, { low: 0.5, high: 100 }),
  },
};

/** Bounds that hold at any age. */
export const boundsOfAll = {
  attempts: bounds("The number of attempts", "attempts", common, {
    usual: { low: 1, high: 2 },
    possible: { low: 1, high: 20 },
  }),
  urineReturnedMl: bounds("The urine returned", "mL", common, {
    usual: { low: 0, high: 1000 },
    possible: { low: 0, high: 6000 },
  }),
  // A drainage bag holds about two liters; with irrigation more runs between two readings.
  urineOutputMl: bounds("The amount of urine", "mL", common, {
    usual: { low: 0, high: 2000 },
    possible: { low: 0, high: 10_000 },
  }),
  balloonWithdrawnMl: bounds("The volume drawn out of the balloon", "mL", common, {
    usual: { low: 1, high: 30 },
    possible: { low: 0, high: 100 },
  }),
  // Twelve weeks is the longest that a catheter is left before it is changed; ten years is no catheter but another year.
  dwellDaysAtArrival: bounds("The time from the insertion to the admission", "days", "RCN, catheter care 2012", {
    usual: { low: 0, high: 84 },
    possible: { low: 0, high: 3650 },
  }),
} as const satisfies Record<string, Bounds>;

/** How much of what was put into a balloon usually comes out again, as parts of it. Common practice. */
export const usualPartWithdrawn: Range = { low: 0.5, high: 1.1 };

export type Quantity = keyof typeof boundsOfAll | keyof typeof boundsByAge;

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
 */
export function boundFaults(values: readonly Charted[], context: BoundsContext): Fault[] {
  return values.flatMap((charted) => {
    if (charted.value === null || charted.value === undefined) return [];
    return faultsOf(charted.quantity, { value: charted.value, pointer: charted.pointer }, context);
  });
}

function faultsOf(quantity: Quantity, at: { value: number; pointer: string }, context: BoundsContext): Fault[] {
  const { words, unit, usual, possible } = boundsOf(quantity, context.ageDays);
  const { pointer } = at;
  if (!within(at.value, possible))
    return [{ code: "out-of-bounds", pointer, detail: `${words} is from ${rangeText(possible)} ${unit}.` }];
  if (context.confirmed.includes(pointer)) return [];
  if (!within(at.value, usual))
    return [{ code: "unusual-value", pointer, detail: `${words} is usually from ${rangeText(usual)} ${unit}.` }];
  const { balloonMl } = context;
  if (quantity !== "balloonWithdrawnMl" || balloonMl === null || balloonMl === undefined) return [];
  const part = { low: balloonMl * usualPartWithdrawn.low, high: balloonMl * usualPartWithdrawn.high };
  if (within(at.value, part)) return [];
  const detail = `${words} is usually between half of what was put in and all of it.`;
  return [{ code: "unusual-value", pointer, detail }];
}

/** The bounds of a quantity at an age; those of all ages together when the age is not known. */
export function boundsOf(quantity: Quantity, ageDays: number | null): Bounds {
  if (quantity !== "sizeFr" && quantity !== "balloonMl") return boundsOfAll[quantity];
  const byAge = boundsByAge[quantity];
  if (ageDays !== null) return byAge[ageGroup(ageDays)];
  const { adult } = byAge;
  const all = Object.values(byAge);
  return { ...adult, usual: around(all.map((b) => b.usual)), possible: around(all.map((b) => b.possible)) };
}

function ageGroup(ageDays: number): AgeGroup {
  if (ageDays < infantUnderDays) return "infant";
  return ageDays < childUnderDays ? "child" : "adult";
}

function around(ranges: readonly Range[]): Range {
  return { low: Math.min(...ranges.map((r) => r.low)), high: Math.max(...ranges.map((r) => r.high)) };
}

/** Also false for what is no number. */
function within(value: number, { low, high }: Range): boolean {
  return value >= low && value <= high;
}

function rangeText({ low, high }: Range): string {
  return `${low} to ${high}`;
}
