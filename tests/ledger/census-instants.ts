import { Temporal } from "temporal-polyfill";

/** A census time in force from a day (days since 1970-01-01) on. */
export interface DatedCensus {
  readonly fromDay: number;
  readonly time: string;
}

/** When a facility day was counted. */
export interface Census {
  readonly day: number;
  readonly at: number;
}

const epoch = Temporal.PlainDate.from("1970-01-01");

/** The local date of an instant, as days since 1970-01-01. */
export function localDay(zone: string, at: number): number {
  const date = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).toPlainDate();
  return epoch.until(date, { largestUnit: "days" }).days;
}

/**
 * The census instants of the facility days from `first` to `last`, one by one with Temporal: what the ledger's own
 * table of census instants is compared with. A day that the zone skipped has none.
 */
export function censusInstants(
  { zone, census }: { zone: string; census: readonly DatedCensus[] },
  first: number,
  last: number,
): Census[] {
  const found: Census[] = [];
  for (let day = first; day <= last; day++) {
    const at = censusOf(zone, day, timeOn(census, day));
    if (at !== null) found.push({ day, at });
  }
  return found;
}

/** The census time in force on a day; the earliest one holds before its day as well. */
function timeOn(census: readonly DatedCensus[], day: number): string {
  const byDay = [...census].sort((a, b) => a.fromDay - b.fromDay);
  const inForce = byDay.filter((c) => c.fromDay <= day).at(-1) ?? byDay[0];
  if (!inForce) throw new Error("the facility has no census time");
  return inForce.time;
}

/** Looked up again and again, and slow to find. */
const known = new Map<string, number | null>();

/** Null for a date that the zone skipped. */
function censusOf(zone: string, day: number, time: string): number | null {
  const key = `${zone} ${day} ${time}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const date = epoch.add({ days: day });
  const midnight = date.add({ days: time === "24:00" ? 1 : 0 }).toPlainDateTime();
  const wanted = time === "24:00" ? midnight : midnight.withPlainTime(Temporal.PlainTime.from(time));
  const exists = date.toZonedDateTime(zone).toPlainDate().equals(date);
  const at = exists ? firstAtOrAfter(zone, wanted) : null;
  known.set(key, at);
  return at;
}

/** The first instant whose local reading is the wanted one, or a later one when the clocks jumped over it. */
function firstAtOrAfter(zone: string, wanted: Temporal.PlainDateTime): number {
  const reads = (at: number) => Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).toPlainDateTime();
  let before = wanted.toZonedDateTime(zone, { disambiguation: "earlier" }).epochMilliseconds;
  if (reads(before).equals(wanted)) return before;
  // In a gap, the two readings of the wanted time lie on either side of the jump, and nothing else is between them.
  let after = wanted.toZonedDateTime(zone, { disambiguation: "later" }).epochMilliseconds;
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (Temporal.PlainDateTime.compare(reads(middle), wanted) < 0) before = middle;
    else after = middle;
  }
  return after;
}
