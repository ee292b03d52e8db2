import { refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayMs, type Instant } from "./day-number.ts";
import { OffsetPeriods } from "./offset-periods.ts";

/**
 * A local date and time without its zone, in milliseconds: the day number times {@link dayMs} plus the time of day.
 * It is what an instant would be if the clocks showed UTC.
 */
export type LocalMs = number;

/** An IANA time zone as the runtime knows it. Get one with {@link zoneNamed}. */
class Zone {
  /** The IANA name by which it was asked for, such as `America/New_York`. */
  readonly name: string;
  readonly #periods: OffsetPeriods;

  constructor(name: string) {
    this.name = name;
    this.#periods = new OffsetPeriods(name);
  }

  /** Local time minus UTC at an instant, in milliseconds; positive east of Greenwich. */
  offsetAt(instant: Instant): number {
    return this.#periods.at(instant).offsetMs;
  }

  /** The date and time that the clocks show at an instant. */
  localAt(instant: Instant): LocalMs {
    return instant + this.#periods.at(instant).offsetMs;
  }

  /** The local calendar date of an instant. Where clocks go back over midnight, a later instant has an earlier date. */
  dayOf(instant: Instant): DayNumber {
    return Math.floor((instant + this.#periods.at(instant).offsetMs) / dayMs);
  }

  /** The first instant of a date, which is not always midnight; null for a date that the zone skipped. */
  startOfDay(n: DayNumber): Instant | null {
    const instant = this.firstInstantFrom(n * dayMs);
    return this.dayOf(instant) === n ? instant : null;
  }

  /** The first instant at which the clocks show this local time or a later one. Never falls when local times rise. */
  firstInstantFrom(local: LocalMs): Instant {
    // A day earlier the clocks cannot yet have shown it: no zone is a whole day ahead of UTC.
    let period = this.#periods.at(local - dayMs);
    for (;;) {
      const instant = Math.max(period.start, local - period.offsetMs);
      if (instant < period.end) return instant;
      period = this.#periods.at(period.end);
    }
  }

  /** All instants at which the clocks show exactly this local time, in order: none in a gap, two when it repeats. */
  instantsAt(local: LocalMs): Instant[] {
    const instants: Instant[] = [];
    let period = this.#periods.at(local - dayMs);
    while (period.start < local + dayMs) {
      const instant = local - period.offsetMs;
      if (instant >= period.start && instant < period.end) instants.push(instant);
      period = this.#periods.at(period.end);
    }
    return instants;
  }
}

export type { Zone };

const zones = new Map<string, Zone>();

/**
 * The zone of an IANA name, such as `America/New_York`; older names and any case are taken too.
 * Kept after the first call with what it has learned. Refuses a name that the runtime does not know (`zone-unknown`).
 */
export function zoneNamed(name: string): Zone {
  const known = zones.get(name);
  if (known !== undefined) return known;
  const zone = newZone(name);
  zones.set(name, zone);
  return zone;
}

function newZone(name: string): Zone {
  try {
    return new Zone(name);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse("zone-unknown", `There is no time zone named ${JSON.stringify(name.slice(0, 64))}.`);
  }
}
