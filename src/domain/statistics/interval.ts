/** How the limits of a count are found. */
export type LimitMethod = "exact" | "mid-p" | "byar";

/** Two-sided limits: they leave (1 - level) / 2 on either side. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
  /** A fraction, such as 0.95. */
  readonly level: number;
  readonly method: LimitMethod;
}

/** A count with the level of the limits that are wanted. */
export interface CountAndLevel {
  readonly observed: number;
  /** A fraction, such as 0.95. */
  readonly level: number;
}
