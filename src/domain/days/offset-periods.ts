import { dayMs, type Instant } from "./day-number.ts";

/** A stretch of time, end left out, during which a zone's clocks keep one distance from UTC. */
export interface OffsetPeriod {
  readonly start: Instant;
  readonly end: Instant;
  /** Local time minus UTC, in milliseconds; positive east of Greenwich. */
  readonly offsetMs: number;
}

/**
 * Distance of two probes for a change of the clocks. A pair of changes that cancel each other would be missed if it
 * fitted between two probes. The closest such pair from 1900 on is 3 days 23 hours 40 minutes apart (Africa/Freetown,
 * 1939-09-01 to 1939-09-05), the next 6 days 23 hours (America/Recife, October 2000).
 * Source: IANA tz database 2025b with the older data of its file `backzone`, all compiled zones compared.
 */
const probeStepMs = 3 * dayMs;

/** Length of the piece of time that is searched for changes at once. A multiple of {@link probeStepMs}. */
const windowMs = 128 * probeStepMs;

/** Changes of the clocks fall on whole seconds (the resolution of the IANA tz database). */
const secondMs = 1000;

/** How the formatter ends its text: `GMT`, `GMT-03:30` or, before standard time, `GMT-00:44:30`. */
const offsetText = /GMT(?:([+-])(\d\d):(\d\d)(?::(\d\d))?)?$/;

/**
 * The periods of one zone, found by asking the runtime's formatter, window by window as they are needed, and kept.
 * A period may be cut in two where two windows meet; both halves then have the same offset.
 */
export class OffsetPeriods {
  readonly #format: Intl.DateTimeFormat;
  readonly #windows = new Map<number, readonly OffsetPeriod[]>();
  #recent: OffsetPeriod = { start: 0, end: 0, offsetMs: 0 };

  /** Throws a RangeError when the runtime does not know the zone. Making the formatter is slow: keep this object. */
  constructor(timeZone: string) {
    this.#format = new Intl.DateTimeFormat("en-US", { timeZone, timeZoneName: "longOffset" });
  }

  /** The period that an instant lies in. Throws a RangeError for an instant that is no date. */
  at(instant: Instant): OffsetPeriod {
    // Most look-ups follow one for nearly the same time, so the last answer is tried first.
    const recent = this.#recent;
    if (instant >= recent.start && instant < recent.end) return recent;
    for (const period of this.#window(Math.floor(instant / windowMs))) {
      if (instant < period.end) {
        this.#recent = period;
        return period;
      }
    }
    throw new RangeError(`${instant} is not an instant`);
  }

  #window(index: number): readonly OffsetPeriod[] {
    const known = this.#windows.get(index);
    if (known !== undefined) return known;
    const periods = this.#search(index * windowMs, (index + 1) * windowMs);
    this.#windows.set(index, periods);
    return periods;
  }

  #search(windowStart: Instant, windowEnd: Instant): OffsetPeriod[] {
    const periods: OffsetPeriod[] = [];
    let start = windowStart;
    let offsetMs = this.#offsetMs(windowStart);
    for (let probe = windowStart + probeStepMs; probe <= windowEnd; probe += probeStepMs) {
      // A loop, not a branch: between two probes the clocks may change more than once.
      while (this.#offsetMs(probe) !== offsetMs) {
        const end = this.#change(Math.max(start, probe - probeStepMs), probe, offsetMs);
        if (end === windowEnd) break;
        periods.push({ start, end, offsetMs });
        start = end;
        offsetMs = this.#offsetMs(end);
      }
    }
    periods.push({ start, end: windowEnd, offsetMs });
    return periods;
  }

  /** The instant after `before` from which the offset is another one, by halving the time between. */
  #change(before: Instant, after: Instant, offsetMs: number): Instant {
    let same = before;
    let other = after;
    while (other - same > secondMs) {
      const middle = same + Math.floor((other - same) / secondMs / 2) * secondMs;
      if (this.#offsetMs(middle) === offsetMs) same = middle;
      else other = middle;
    }
    return other;
  }

  #offsetMs(instant: Instant): number {
    const text = this.#format.format(instant);
    const found = offsetText.exec(text);
    if (found === null) throw new Error(`The runtime writes an offset in an unknown form: ${text}`);
    const [, sign, hours = 0, minutes = 0, seconds = 0] = found;
    const ms = (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) * secondMs;
    return sign === "-" ? -ms : ms;
  }
}
