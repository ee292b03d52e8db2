import { refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayMs, dayText, type Instant } from "./day-number.ts";
import type { LocalMs, Zone } from "./zone.ts";

const minuteMs = 60_000;

/** Years that a time may lie in. Others are slips of the pen, such as 0206 for 2026. */
const firstYear = 1900;
const lastYear = 2100;

/** The offsets in use on Earth reach from -12:00 to +14:00 (IANA tz database, from 1970 on). */
const leastOffsetMinutes = -12 * 60;
const mostOffsetMinutes = 14 * 60;

const timeForm = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.(\d{1,3}))?)?(?:(Z)|([+-])(\d\d):(\d\d))?$/;

/** What people and spreadsheets write in place of a time, with the reason that they are told. The first match counts. */
const otherForms: readonly (readonly [RegExp, string])[] = [
  [/^\s*$/, "The time is empty."],
  [/^\s|\s$/, "There is a space before or after the time."],
  [/^\d{4}-\d\d-\d\d$/, "The time of day is missing."],
  [/^\d{1,4}\/\d{1,2}\/\d{1,4}/, "A date with slashes can be read in two ways."],
  [/^\d{1,6}([.,]\d+)?$/, "This looks like the serial number that a spreadsheet keeps for a date."],
  [/^\d{1,2}:\d\d/, "The date is missing."],
];

/**
 * Reads a time: `YYYY-MM-DDTHH:MM`, `…:SS` or `…:SS.sss`, with a space in place of the T if need be. With `Z` or an
 * offset such as `-05:00` it is that instant; without, it is the zone's local time. A local time that occurs twice
 * gives the earlier instant and `repeated`.
 * Refuses a local time that did not exist (`time-does-not-exist`, naming the times before and after the gap) and all
 * else (`time-unreadable`, with the reason; never with the text, which may be a patient's name in the wrong column).
 */
export function readLocalTime(text: string, zone: Zone): { instant: Instant; repeated: boolean } {
  const { local, offsetMs } = readText(text);
  if (offsetMs !== null) return { instant: local - offsetMs, repeated: false };
  const [instant, second] = zone.instantsAt(local);
  if (instant === undefined) return refuseGap(local, zone);
  return { instant, repeated: second !== undefined };
}

/** The instant that is taken for a day whose hour is not known, just after it began; null for a day that the zone skipped. */
export function instantOfDay(day: DayNumber, zone: Zone): Instant | null {
  const start = zone.startOfDay(day);
  return start === null ? null : start + 1;
}

/** The day of a time at which the zone's clocks show 00:00, also where they skip it; else null. Refuses what is no time. */
export function midnightOf(text: string, zone: Zone): DayNumber | null {
  const { local, offsetMs } = readText(text);
  const shown = offsetMs === null ? local : zone.localAt(local - offsetMs);
  return shown % dayMs === 0 ? shown / dayMs : null;
}

/**
 * An instant as the zone's local time, `YYYY-MM-DDTHH:MM`; seconds and thousandths are written only where they are
 * not zero. The second pass of a repeated hour looks like the first.
 */
export function showLocalTime(instant: Instant, zone: Zone): string {
  return localText(zone.localAt(instant));
}

function localText(local: LocalMs): string {
  const day = Math.floor(local / dayMs);
  const time = new Date(local - day * dayMs).toISOString().slice(11, 23);
  return `${dayText(day)}T${time.replace(/(:00)?\.000$/, "")}`;
}

/** A written time's date and time of day, and its offset in milliseconds or null. */
function readText(text: string): { local: LocalMs; offsetMs: number | null } {
  const parts = timeForm.exec(text);
  if (parts === null) return unreadable(otherForms.find(([form]) => form.test(text))?.[1] ?? "It has another form.");
  const [, year, month, dayOfMonth, hour, minute, second = 0, fraction = "", utc, sign, ...offset] = parts;
  const dateMs = readDate(Number(year), Number(month), Number(dayOfMonth));
  const timeMs = readTimeOfDay(Number(hour), Number(minute), Number(second));
  const local = dateMs + timeMs + Number(fraction.padEnd(3, "0"));
  if (utc !== undefined) return { local, offsetMs: 0 };
  if (sign === undefined) return { local, offsetMs: null };
  return { local, offsetMs: readOffset(sign, Number(offset[0]), Number(offset[1])) };
}

function readDate(year: number, month: number, dayOfMonth: number): LocalMs {
  if (year < firstYear || year > lastYear) return unreadable(`The year is not between ${firstYear} and ${lastYear}.`);
  if (month < 1 || month > 12) return unreadable("There is no such month.");
  const monthDays = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (dayOfMonth < 1 || dayOfMonth > monthDays) return unreadable(`That month had the days 1 to ${monthDays}.`);
  return Date.UTC(year, month - 1, dayOfMonth);
}

function readTimeOfDay(hour: number, minute: number, second: number): number {
  if (hour === 24) return unreadable("A time runs from 00:00 to 23:59. Write 24:00 as 00:00 of the next day.");
  if (hour > 24) return unreadable("There is no such hour.");
  if (minute > 59) return unreadable("There is no such minute.");
  if (second > 59) return unreadable("There is no such second.");
  return hour * 60 * minuteMs + minute * minuteMs + second * 1000;
}

function readOffset(sign: string, hours: number, minutes: number): number {
  const offsetMinutes = (hours * 60 + minutes) * (sign === "-" ? -1 : 1);
  if (minutes > 59 || offsetMinutes < leastOffsetMinutes || offsetMinutes > mostOffsetMinutes) {
    return unreadable("There is no such offset from UTC; offsets run from -12:00 to +14:00.");
  }
  return offsetMinutes * minuteMs;
}

function unreadable(reason: string): never {
  return refuse("time-unreadable", reason);
}

function refuseGap(local: LocalMs, zone: Zone): never {
  const after = zone.firstInstantFrom(local);
  const before = showLocalTime(after - minuteMs, zone);
  const from = `${localText(local)} did not exist in ${zone.name}`;
  return refuse("time-does-not-exist", `${from}: the clocks went from ${before} to ${showLocalTime(after, zone)}.`);
}
