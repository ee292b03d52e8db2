import { expect, it } from "vitest";
import { dayOrTime } from "../../../src/csv/cells/day-or-time.ts";
import { localTime } from "../../../src/csv/cells/local-time.ts";
import { timeOfDay } from "../../../src/csv/cells/time-of-day.ts";
import type { CellReader, MarkKind } from "../../../src/csv/column.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";

/** What a reader makes of a text of a source whose 00:00 means that the hour is not known. */
function read(reader: CellReader<unknown>, text: string, zone = "America/New_York") {
  const marks: MarkKind[] = [];
  const settings = { emptyOrganism: "reject", midnight: "no-hour" } as const;
  const value = reader.read(text, { zone: zoneNamed(zone), settings, mark: (kind) => marks.push(kind) });
  return { value, marks };
}

const justAfter = (...utc: Parameters<typeof Date.UTC>) => ({ value: Date.UTC(...utc) + 1, marks: ["no-hour"] });

it.each<[string, string, ReturnType<typeof justAfter>]>([
  ["2026-02-01T00:00", "America/New_York", justAfter(2026, 1, 1, 5)],
  ["2026-02-01 00:00:00", "America/New_York", justAfter(2026, 1, 1, 5)],
  ["2026-02-01T05:00Z", "America/New_York", justAfter(2026, 1, 1, 5)],
  // Beirut's clocks went from 00:00 to 01:00 on 2021-03-28 (IANA tz database): the day has no 00:00.
  ["2021-03-28T00:00", "Asia/Beirut", justAfter(2021, 2, 27, 22)],
  // Havana's clocks went back from 01:00 to 00:00 on 2021-11-07 (IANA tz database): 00:00 occurs twice.
  ["2021-11-07T00:00", "America/Havana", justAfter(2021, 10, 7, 4)],
])("%s in %s is a day without an hour, taken just after it began", (text, zone, expected) => {
  expect(read(localTime, text, zone)).toEqual(expected);
});

it.each(["2026-02-01T00:01", "2026-02-01T00:00:30", "2026-02-01T00:00Z"])("%s has an hour", (text) => {
  expect(read(localTime, text).marks).toEqual([]);
});

it("of a review noon is taken, and of a sign no time", () => {
  expect(read(dayOrTime, "2026-02-01T00:00")).toEqual({ value: Date.UTC(2026, 1, 1, 17), marks: ["time-unknown"] });
  expect(read(dayOrTime, "2026-02-01T00:30")).toEqual({ value: Date.UTC(2026, 1, 1, 5, 30), marks: [] });
  expect(read(timeOfDay, "00:00")).toEqual({ value: null, marks: ["no-hour"] });
  expect(read(timeOfDay, "00:01")).toEqual({ value: "00:01", marks: [] });
});
