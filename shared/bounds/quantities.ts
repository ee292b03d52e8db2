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
  /** null for what is only counted. */
  readonly unit: string | null;
  /** What is measured, as a sentence begins. */
  readonly words: string;
  /** When a value outside the usual is right all the same. */
  readonly unless?: string;
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

/** Bounds that change with age. Infants' are common practice. */
export const boundsByAge: Readonly<Record<"sizeFr" | "balloonMl", Readonly<Record<AgeGroup, Bounds>>>> = {
  sizeFr: {
    infant: {
      words: "The size of an infant's catheter",
      unit: "Fr",
      usual: { low: 5, high: 8 },
      possible: { low: 3, high: 14 },
      source: common,
    },
    child: {
      words: "The size of a child's catheter",
      unit: "Fr",
      usual: { low: 6, high: 10 },
      possible: { low: 3, high: 24 },
      source: sizes,
    },
    adult: {
      words: "The size of an adult's catheter",
      unit: "Fr",
      usual: { low: 12, high: 16 },
      possible: { low: 3, high: 30 },
      unless: "up to 24 with clots or for irrigation",
      source: sizes,
    },
  },
  balloonMl: {
    infant: {
      words: "The balloon volume of an infant's catheter",
      unit: "mL",
      usual: { low: 1, high: 3 },
      possible: { low: 0.5, high: 15 },
      source: common,
    },
    child: {
      words: "The balloon volume of a child's catheter",
      unit: "mL",
      usual: { low: 3, high: 5 },
      possible: { low: 0.5, high: 50 },
      source: balloons,
    },
    adult: {
      words: "The balloon volume of an adult's catheter",
      unit: "mL",
      usual: { low: 5, high: 10 },
      possible: { low: 0.5, high: 100 },
      unless: "30 for special use, such as after surgery of the prostate",
      source: balloons,
    },
  },
};

/** What the sentence begins with while nobody knows the age. */
const wordsAtAnyAge = { sizeFr: "The size of a catheter", balloonMl: "The balloon volume of a catheter" } as const;

/** Bounds that hold at any age. */
export const boundsAtAnyAge = {
  attempts: {
    words: "The number of attempts",
    unit: null,
    usual: { low: 1, high: 2 },
    possible: { low: 1, high: 20 },
    source: common,
  },
  urineReturnedMl: {
    words: "The urine returned",
    unit: "mL",
    usual: { low: 0, high: 1000 },
    possible: { low: 0, high: 6000 },
    unless: "more after a long retention",
    source: common,
  },
  // A drainage bag holds about two liters; with irrigation more runs between two readings.
  urineOutputMl: {
    words: "One amount of urine",
    unit: "mL",
    usual: { low: 0, high: 2000 },
    possible: { low: 0, high: 10_000 },
    unless: "more with irrigation",
    source: common,
  },
  balloonWithdrawnMl: {
    words: "The volume drawn out of the balloon",
    unit: "mL",
    usual: { low: 1, high: 30 },
    possible: { low: 0, high: 100 },
    unless: "nothing from a balloon that had burst",
    source: common,
  },
  // The two hold the same temperatures, exactly: a value is never converted to be judged.
  temperatureCelsius: {
    words: "A temperature",
    unit: "°C",
    usual: { low: 32, high: 42 },
    possible: { low: 13, high: 46.5 },
    unless: "colder after an accident",
    source: "survivors of accidents were as cold as 13.7 °C and as hot as 46.5 °C (from memory)",
  },
  temperatureFahrenheit: {
    words: "A temperature",
    unit: "°F",
    usual: { low: 89.6, high: 107.6 },
    possible: { low: 55.4, high: 115.7 },
    unless: "colder after an accident",
    source: "the bounds in °C, of which these are the same",
  },
  // Twelve weeks is the longest that a catheter stays before it is changed; ten years is a slip in the year.
  dwellDaysAtArrival: {
    words: "The time from the insertion to the admission",
    unit: "days",
    usual: { low: 0, high: 84 },
    possible: { low: 0, high: 3650 },
    source: "RCN, catheter care 2012 (changed after at most 12 weeks)",
  },
} as const satisfies Record<string, Bounds>;

/** How much of what was put into a balloon usually comes out again, as parts of it. Common practice. */
export const usualPartWithdrawn: Range = { low: 0.5, high: 1.1 };

export type Quantity = keyof typeof boundsAtAnyAge | keyof typeof boundsByAge;

/** The bounds of a quantity at an age; those of all ages together when the age is not known. */
export function boundsOf(quantity: Quantity, ageDays: number | null): Bounds {
  if (quantity !== "sizeFr" && quantity !== "balloonMl") return boundsAtAnyAge[quantity];
  const byAge = boundsByAge[quantity];
  if (ageDays !== null) return byAge[ageGroup(ageDays)];
  const all = Object.values(byAge);
  return {
    words: wordsAtAnyAge[quantity],
    unit: byAge.adult.unit,
    usual: around(all.map((bounds) => bounds.usual)),
    possible: around(all.map((bounds) => bounds.possible)),
    source: [...new Set(all.map((bounds) => bounds.source))].join("; "),
  };
}

function ageGroup(ageDays: number): AgeGroup {
  if (ageDays < infantUnderDays) return "infant";
  return ageDays < childUnderDays ? "child" : "adult";
}

function around(ranges: readonly Range[]): Range {
  return { low: Math.min(...ranges.map((range) => range.low)), high: Math.max(...ranges.map((range) => range.high)) };
}
