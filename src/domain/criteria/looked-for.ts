import { type DayNumber, daysFromTo } from "../days/day-number.ts";
import type { DayRange } from "./determination.ts";
import type { CriterionSign } from "./rule-kinds.ts";
import type { Sign } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/** An entry that says that a sign is not documented: for which days the chart was read, and on which day. */
interface ChartReview extends DayRange {
  readonly id: number;
  readonly readDay: DayNumber;
}

/** What the record says of signs that may not have been there. */
export interface LookedFor {
  /** Signs of which the window is known: looked for, or not documented in a chart that was read for its days. */
  readonly known: ReadonlySet<CriterionSign>;
  /** Those of them that are known by chart reviews, with the entries of these and the days on which the chart was read. */
  readonly undocumented: ReadonlyMap<CriterionSign, readonly ChartReview[]>;
  /** Signs that a chart review covers in part, with the days of the window that it leaves open. */
  readonly reviewedInPart: ReadonlyMap<CriterionSign, readonly DayNumber[]>;
}

/**
 * Which signs are known of the days of a window. A finding of its day is enough for the whole window where the edition
 * says so; a chart review covers the days that it names up to the day on which the chart was read, and no later one.
 */
export function lookedForIn(signs: readonly Sign[], days: DayRange, world: World): LookedFor {
  const { lookedFor } = world.edition.options;
  const known = new Set<CriterionSign>();
  const undocumented = new Map<CriterionSign, readonly ChartReview[]>();
  const reviewedInPart = new Map<CriterionSign, readonly DayNumber[]>();
  for (const [name, told] of bySign(signs)) {
    const seen = new Set(told.flatMap(({ review, when }) => (review === null ? [when.day] : [])));
    const isSeen = lookedFor === "any-day" ? seen.size > 0 : everyDay(days).every((day) => seen.has(day));
    const reviews = world.edition.options.undocumented === "no-element" ? told.flatMap(reviewOf) : [];
    const isCovered = (day: DayNumber) => reviews.some(({ first, last }) => first <= day && day <= last);
    const open = everyDay(days).filter((day) => !seen.has(day) && !isCovered(day));
    if (isSeen || open.length === 0) known.add(name);
    if (isSeen || reviews.length === 0) continue;
    if (open.length === 0) undocumented.set(name, reviews);
    else if (open.length < everyDay(days).length) reviewedInPart.set(name, open);
  }
  return { known, undocumented, reviewedInPart };
}

function bySign(signs: readonly Sign[]): Map<CriterionSign, Sign[]> {
  const found = new Map<CriterionSign, Sign[]>();
  for (const sign of signs) {
    for (const name of criterionSignsOf(sign)) found.set(name, [...(found.get(name) ?? []), sign]);
  }
  return found;
}

/** The signs of criteria that a recorded sign tells of. Chills and hypotension are no sign of a urinary tract infection. */
export function criterionSignsOf({ sign }: Pick<Sign, "sign">): readonly CriterionSign[] {
  if (sign === "chills" || sign === "hypotension") return [];
  return sign === "temperature" ? ["fever", "hypothermia"] : [sign];
}

function reviewOf({ id, when, review }: Sign): ChartReview[] {
  if (review === null) return [];
  const { lastDay, readDay } = review;
  return [{ id, first: when.day, last: Math.min(lastDay, readDay), readDay }];
}

function everyDay({ first, last }: DayRange): DayNumber[] {
  return first > last ? [] : daysFromTo(first, last);
}
