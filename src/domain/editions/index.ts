import type { Edition } from "../criteria/edition.ts";
import type { DayNumber } from "../days/day-number.ts";
import { ecdc2017 } from "./ecdc-2017.ts";
import { us2024 } from "./us-2024.ts";

/** Every edition that can be chosen. */
export const editions: readonly Edition[] = [us2024, ecdc2017];

/** A family of editions, of which a facility follows one: the part of the id before the year. */
export type EditionFamily = "us" | "ecdc";

/** The family of an edition that is held here; null for any other name. */
export function familyNamed(id: string): EditionFamily | null {
  return editionNamed(id) === undefined ? null : id.startsWith("us-") ? "us" : "ecdc";
}

/** The edition of an id, or undefined. */
export function editionNamed(id: string): Edition | undefined {
  return editions.find((edition) => edition.id === id);
}

/**
 * The edition of a family that is in force on a day; for days before all of them the earliest, because no older one is
 * held: its `inForce` says so.
 */
export function editionInForce(family: EditionFamily, day: DayNumber): Edition {
  const own = editions.filter(({ id }) => id.startsWith(`${family}-`)).sort((a, b) => a.inForce.from - b.inForce.from);
  const edition = own.findLast(({ inForce }) => inForce.from <= day) ?? own[0];
  if (!edition) throw new Error(`no edition of the family ${family} is held`);
  return edition;
}

/** The days after an anchor from which evidence can count by an edition or any of its readings. */
export function longestWindowOf({ options, openPoints }: Edition): number {
  const others = openPoints.flatMap(({ option, otherValues }) => (option === "windowDays" ? otherValues : []));
  return Math.max(options.windowDays, ...others.map(Number));
}

/** The days between a culture and the farthest date of event that any edition can give it, by any reading. */
export const longestWindowDays = Math.max(...editions.map(longestWindowOf));
