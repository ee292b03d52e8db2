import { type Day, day as dayText } from "../../../shared/day.ts";

/** Times on the clocks of a facility, whatever the device's own zone is. */
export interface FacilityTime {
  /** The facility day of an instant: `2026-11-20`. */
  dayOf(at: number): Day;
  /** `09:30`. */
  clock(at: number): string;
  /** `Nov 20, 09:30`. */
  short(at: number): string;
  /** `Nov 20`. */
  shortDay(at: number): string;
  /** As it is charted and sent: `2026-11-20T09:30`. */
  charted(at: number): string;
}

/** Times in a zone; the formats are made once, because making one takes longer than using it a hundred times. */
export function facilityTime(zone: string): FacilityTime {
  const parts = new Intl.DateTimeFormat("en-CA", {
    timeZone: zone,
    ...{ year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit", hourCycle: "h23" },
  });
  const short = new Intl.DateTimeFormat("en-US", { timeZone: zone, month: "short", day: "numeric" });
  const read = (at: number): Readonly<Record<string, string>> =>
    Object.fromEntries(parts.formatToParts(at).map(({ type, value }) => [type, value]));
  const dayOf = (at: number): string => {
    const { year, month, day } = read(at);
    return `${year}-${month}-${day}`;
  };
  const clock = (at: number): string => {
    const { hour, minute } = read(at);
    return `${hour}:${minute}`;
  };
  return {
    dayOf: (at) => dayText.parse(dayOf(at)),
    clock,
    shortDay: (at) => short.format(at),
    short: (at) => `${short.format(at)}, ${clock(at)}`,
    charted: (at) => `${dayOf(at)}T${clock(at)}`,
  };
}
