import type { Month } from "../../../shared/day.ts";
import type { Edition, EditionOptions, ReadingChange } from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";
import { monthOf } from "../days/month.ts";
import { editionInForce, familyNamed } from "./index.ts";

/** A reading of an open point that a facility chose for an edition, from a month on. */
export interface ChosenReading extends ReadingChange {
  readonly editionId: string;
  readonly fromMonth: Month;
}

type ReadEdition = (edition: Edition, day: DayNumber) => Edition;

/** An edition as it is read on a day. */
export interface ReadOn extends ReadEdition {
  /** The same without what the facility chose. */
  readonly unchosen: ReadEdition;
}

/**
 * How editions are read on each day: with their own changes, and then with what the facility chose, the latest month
 * last. Days up to the end of the month `earlierThrough` keep the readings before the changes. The same readings give the same object, so that determinations by it are made once.
 */
export function readingsOf(chosen: readonly ChosenReading[], earlierThrough: Month | null = null): ReadOn {
  const known = new Map<string, Edition>();
  const inOrder = [...chosen].sort((a, b) => (a.fromMonth < b.fromMonth ? -1 : a.fromMonth > b.fromMonth ? 1 : 0));
  const readBy = (all: readonly ChosenReading[]) => (edition: Edition, day: DayNumber) => {
    const month = monthOf(day);
    const own = all.filter(({ editionId, fromMonth }) => editionId === edition.id && fromMonth <= month);
    const isEarlier = earlierThrough !== null && month <= earlierThrough;
    const changes = [...(isEarlier ? [] : edition.changes), ...own];
    if (changes.length === 0) return edition;
    const options = { ...edition.options, ...Object.fromEntries(changes.map(({ option, value }) => [option, value])) };
    const key = `${edition.id} ${JSON.stringify(options)}`;
    const read = known.get(key) ?? { ...edition, options: options as EditionOptions };
    known.set(key, read);
    return read;
  };
  return Object.assign(readBy(inOrder), { unchosen: readBy([]) });
}

/**
 * The open points that a family of definitions is read otherwise for than the edition itself says on a day, in words;
 * empty for an edition that is not held, or null.
 */
export function nonDefaultWords(named: string | null, day: DayNumber, readOn: ReadOn): string[] {
  const family = named === null ? null : familyNamed(named);
  if (family === null) return [];
  const edition = editionInForce(family, day);
  const own = readOn.unchosen(edition, day).options;
  const { options } = readOn(edition, day);
  return edition.openPoints
    .filter(({ option }) => options[option] !== own[option])
    .map(({ option, point, reading, otherReading }) => {
      const value = options[option];
      const words = value === edition.defaults[option] ? reading : otherReading;
      return `${point}: ${typeof value === "number" ? value : words}`;
    });
}
