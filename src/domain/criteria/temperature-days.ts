import { type DayNumber, daysFromTo } from "../days/day-number.ts";
import type { DayRange } from "./determination.ts";
import { daysWords, dayWords, listWords, rangeWords } from "./in-words.ts";
import type { CriterionFacts, Said } from "./rule-kinds.ts";
import type { Sign } from "./surveillance-timeline.ts";
import { isHuman } from "./temperature.ts";
import { couldHaveFever } from "./usable-signs.ts";

/** On how many of the days in which a fever would count a temperature is recorded. */
export interface TemperatureDays {
  readonly measured: number;
  readonly of: number;
}

/**
 * What is said of the days with and without a temperature where no fever is in the window, with their numbers; null where
 * every day has one, where fever is there or would be no element, and while the window is open. One normal temperature
 * does not prove a week.
 */
export function temperatureNote(facts: CriterionFacts): (Said & { readonly temperature: TemperatureDays }) | null {
  const { world, window, signs, anchor } = facts;
  const hasFever = signs.present.some(({ sign }) => sign === "fever");
  if (hasFever || signs.openUntil !== null || window.usableFrom > signs.closesOn || !couldHaveFever(facts)) return null;
  const days = daysFromTo(window.usableFrom, signs.closesOn);
  const withOne = new Set(world.timeline.signs.filter(isReading).map(({ when }) => when.day));
  const measured = days.filter((day) => withOne.has(day));
  const missing = days.filter((day) => !withOne.has(day));
  if (missing.length === 0) return null;
  const found = measured.length === 0 ? "" : `: ${stretchesWords(measured)}`;
  const isEnough = measured.length > 0 && world.edition.options.lookedFor === "any-day";
  const reading = isEnough ? " By the reading in force, one day is enough to know that there was no fever." : "";
  return {
    ...{ status: "noted", day: anchor.day, evidence: [] },
    sentence: `Temperature on ${measured.length} of ${daysWords(days.length)}${found}; none on ${stretchesWords(missing)}.${reading}`,
    temperature: { measured: measured.length, of: days.length },
  };
}

/** Measured, or looked for and no fever: either says something of its day. */
function isReading({ sign, finding, temperature }: Sign): boolean {
  if (sign !== "temperature") return false;
  return finding === "absent" || (finding === "present" && temperature !== null && isHuman(temperature));
}

/** `7 March to 9 March 2024 and 11 March 2024`. */
function stretchesWords(days: readonly DayNumber[]): string {
  const stretches: DayRange[] = [];
  for (const day of days) {
    const last = stretches.at(-1);
    if (last && last.last === day - 1) stretches[stretches.length - 1] = { first: last.first, last: day };
    else stretches.push({ first: day, last: day });
  }
  const words = stretches.map((one) => (one.first === one.last ? dayWords(one.first) : rangeWords(one)));
  return listWords(words, "and");
}
