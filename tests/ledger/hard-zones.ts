import { Temporal } from "temporal-polyfill";

/** A zone, and a day near which it has something hard; the random hospital lives around that day. */
export interface HardZone {
  readonly zone: string;
  readonly around: string;
}

/**
 * Hard and ordinary zones.
 * Source of the changes: IANA time zone database, as the runtime has it.
 */
export const hardZones: readonly HardZone[] = [
  // No local midnight on the day that the clocks go forward.
  { zone: "America/Sao_Paulo", around: "2018-11-04" },
  { zone: "America/Havana", around: "2024-03-10" },
  // Half an hour, and two hours.
  { zone: "Australia/Lord_Howe", around: "2024-04-07" },
  { zone: "Australia/Lord_Howe", around: "2024-10-06" },
  { zone: "Antarctica/Troll", around: "2024-03-31" },
  // A date that was skipped.
  { zone: "Pacific/Apia", around: "2011-12-30" },
  // A gap late in the evening.
  { zone: "America/Nuuk", around: "2024-03-30" },
  // Clocks go back one minute after midnight, into the day before.
  { zone: "America/St_Johns", around: "2010-11-07" },
  // Back for Ramadan, and forward again.
  { zone: "Africa/Casablanca", around: "2024-04-01" },
  { zone: "Europe/Dublin", around: "2024-10-27" },
  { zone: "America/New_York", around: "2024-03-10" },
  { zone: "America/New_York", around: "2024-11-03" },
  { zone: "Europe/Berlin", around: "2024-03-31" },
  { zone: "Australia/Sydney", around: "2024-10-06" },
  // No change of clocks: over a leap day, over the end of a year, and far from UTC.
  { zone: "UTC", around: "2024-02-29" },
  { zone: "Asia/Tokyo", around: "2024-12-31" },
  { zone: "Asia/Kathmandu", around: "2023-12-31" },
  { zone: "Pacific/Kiritimati", around: "2024-02-29" },
];

/** Daily census times: both midnights, one that clock changes skip or repeat, noon, and late in the evening. */
export const hardCensusTimes = ["00:00", "24:00", "02:30", "12:00", "00:30", "22:30"] as const;

/** The instant of local midnight (or the first after it) so many days before or after a day. */
export function midnight({ zone, around }: HardZone, days: number): number {
  return Temporal.PlainDate.from(around).add({ days }).toZonedDateTime(zone).epochMilliseconds;
}

/** The first clock change after an instant; null when none follows. */
export function clockChangeAfter(zone: string, at: number): number | null {
  const next = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).getTimeZoneTransition("next");
  return next?.epochMilliseconds ?? null;
}

/** The first day of the month after that of an instant, as YYYY-MM-DD. */
export function nextMonth(zone: string, at: number): string {
  const today = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).toPlainDate();
  return today.with({ day: 1 }).add({ months: 1 }).toString();
}
