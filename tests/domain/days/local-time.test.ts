import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../shared/problems.ts";
import { readLocalTime, showLocalTime } from "../../../src/domain/days/local-time.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import { everyZone, instantsIn, zoned } from "./every-zone.ts";

function read(text: string, zone = "America/New_York"): [string, boolean] {
  const { instant, repeated } = readLocalTime(text, zoneNamed(zone));
  return [new Date(instant).toISOString(), repeated];
}

function refusal(text: string, zone = "America/New_York"): { code: string; detail: string } {
  try {
    read(text, zone);
  } catch (error) {
    if (error instanceof Problem) return { code: error.code, detail: error.message };
    throw error;
  }
  throw new Error(`${text} was read`);
}

describe("a local time", () => {
  // Source: ISO 8601 forms; New York is 5 hours behind UTC in winter, 4 in summer (IANA tz database 2025b, `zdump -v`).
  it.each([
    ["2026-01-05T08:15", "2026-01-05T13:15:00.000Z"],
    ["2026-01-05 08:15", "2026-01-05T13:15:00.000Z"],
    ["2026-07-05T08:15:30", "2026-07-05T12:15:30.000Z"],
    ["2026-07-05T08:15:30.250", "2026-07-05T12:15:30.250Z"],
    ["2026-07-05T08:15:30.5", "2026-07-05T12:15:30.500Z"],
    ["2024-02-29T00:00", "2024-02-29T05:00:00.000Z"],
    ["2025-12-31T23:59:59", "2026-01-01T04:59:59.000Z"],
    ["2026-01-05T08:15Z", "2026-01-05T08:15:00.000Z"],
    ["2026-01-05T08:15:30.001+05:45", "2026-01-05T02:30:30.001Z"],
    ["2026-01-05 08:15-03:30", "2026-01-05T11:45:00.000Z"],
    ["2026-03-08T02:30-05:00", "2026-03-08T07:30:00.000Z"],
    ["2026-11-01T01:30-05:00", "2026-11-01T06:30:00.000Z"],
    ["1900-01-01T00:00Z", "1900-01-01T00:00:00.000Z"],
    ["2100-12-31T23:59Z", "2100-12-31T23:59:00.000Z"],
    ["2026-01-05T12:00-12:00", "2026-01-06T00:00:00.000Z"],
    ["2026-01-05T14:00+14:00", "2026-01-05T00:00:00.000Z"],
    ["2026-01-05T05:59+05:59", "2026-01-05T00:00:00.000Z"],
  ])("%s is read as %s", (text, instant) => {
    expect(read(text)).toEqual([instant, false]);
  });

  // Source: IANA tz database 2025b, changes as `zdump -v` prints them.
  it.each([
    ["America/New_York", "2026-11-01T01:00", "2026-11-01T05:00:00.000Z"],
    ["America/New_York", "2026-11-01T01:59:59", "2026-11-01T05:59:59.000Z"],
    ["America/Havana", "2024-11-03T00:00", "2024-11-03T04:00:00.000Z"],
    ["Australia/Lord_Howe", "2024-04-07T01:30", "2024-04-06T14:30:00.000Z"],
    ["Antarctica/Troll", "2024-10-27T01:00", "2024-10-26T23:00:00.000Z"],
    ["Europe/Dublin", "2024-10-27T01:30", "2024-10-27T00:30:00.000Z"],
    ["Africa/Casablanca", "2024-03-10T02:00", "2024-03-10T01:00:00.000Z"],
    ["America/Nuuk", "2024-10-26T23:30", "2024-10-27T00:30:00.000Z"],
  ])("that %s shows twice, %s, is the earlier instant and marked", (zone, text, instant) => {
    expect(read(text, zone)).toEqual([instant, true]);
  });

  it.each([
    ["America/New_York", "2026-11-01T00:59:59", "2026-11-01T04:59:59.000Z"],
    ["America/New_York", "2026-11-01T02:00", "2026-11-01T07:00:00.000Z"],
    ["America/New_York", "2026-03-08T01:59", "2026-03-08T06:59:00.000Z"],
    ["America/New_York", "2026-03-08T03:00", "2026-03-08T07:00:00.000Z"],
    ["Australia/Lord_Howe", "2024-04-07T02:00", "2024-04-06T15:30:00.000Z"],
  ])("at the very edge of a change in %s, %s, occurs once", (zone, text, instant) => {
    expect(read(text, zone)).toEqual([instant, false]);
  });

  // Source: IANA tz database 2025b, changes as `zdump -v` prints them.
  it.each([
    ["America/New_York", "2026-03-08T02:00", "2026-03-08T01:59", "2026-03-08T03:00"],
    ["America/New_York", "2026-03-08T02:59:59.999", "2026-03-08T01:59", "2026-03-08T03:00"],
    ["America/Sao_Paulo", "2018-11-04T00:00", "2018-11-03T23:59", "2018-11-04T01:00"],
    ["Australia/Lord_Howe", "2024-10-06T02:15", "2024-10-06T01:59", "2024-10-06T02:30"],
    ["Pacific/Apia", "2011-12-30T00:00", "2011-12-29T23:59", "2011-12-31T00:00"],
    ["Pacific/Apia", "2011-12-30T23:59", "2011-12-29T23:59", "2011-12-31T00:00"],
    ["America/Nuuk", "2024-03-30T23:30", "2024-03-30T22:59", "2024-03-31T00:00"],
    ["Europe/Dublin", "2024-03-31T01:30", "2024-03-31T00:59", "2024-03-31T02:00"],
    ["Antarctica/Troll", "2024-03-31T02:59", "2024-03-31T00:59", "2024-03-31T03:00"],
    ["Africa/Casablanca", "2024-04-14T02:00", "2024-04-14T01:59", "2024-04-14T03:00"],
    ["Asia/Kathmandu", "1986-01-01T00:14", "1985-12-31T23:59", "1986-01-01T00:15"],
  ])("that %s skipped, %s, is refused with the times beside it", (zone, text, before, after) => {
    const { code, detail } = refusal(text, zone);
    expect(code).toBe("time-does-not-exist");
    expect(detail).toBe(`${text} did not exist in ${zone}: the clocks went from ${before} to ${after}.`);
  });
});

describe("what is no time", () => {
  it.each([
    ["", "empty"],
    ["  ", "empty"],
    ["2026-01-05T08:15 ", "space before or after"],
    ["2026-01-05", "time of day is missing"],
    ["08:15", "date is missing"],
    ["01/02/2026", "slashes"],
    ["1/2/26 8:15 AM", "slashes"],
    ["2026/01/05 08:15", "slashes"],
    ["46027", "serial number"],
    ["46027.34375", "serial number"],
    ["46027,34375", "serial number"],
    ["2026-00-05T08:15", "no such month"],
    ["2026-13-05T08:15", "no such month"],
    ["2026-01-00T08:15", "days 1 to 31"],
    ["2026-04-31T08:15", "days 1 to 30"],
    ["2026-02-29T08:15", "days 1 to 28"],
    ["2024-02-30T08:15", "days 1 to 29"],
    ["2100-02-29T08:15", "days 1 to 28"],
    ["2026-01-05T24:00", "00:00 of the next day"],
    ["2026-01-05T25:00", "no such hour"],
    ["2026-01-05T08:60", "no such minute"],
    ["2026-12-31T23:59:60", "no such second"],
    ["0206-01-05T08:15", "between 1900 and 2100"],
    ["2101-01-01T00:00", "between 1900 and 2100"],
    ["2026-01-05T08:15+14:01", "offset"],
    ["2026-01-05T08:15-12:01", "offset"],
    ["2026-01-05T08:15+05:60", "offset"],
    ["2026-1-5T8:15", "another form"],
    ["20260105081500", "another form"],
    ["2026-01-05t08:15", "another form"],
    ["2026-01-05T08:15+0500", "another form"],
    ["2026-01-05T08:15:30.1234", "another form"],
    ["2026-01-05T08:15\n", "space before or after"],
    ["2026-01-05T08:15 America/New_York", "another form"],
    ["٢٠٢٦-01-05T08:15", "another form"],
    ["on 2026-01-05T08:15", "another form"],
    ["on 2026-01-05", "another form"],
    ["on 1/2/2026", "another form"],
    ["Doe, Jane", "another form"],
  ])("%j is refused with the reason", (text, reason) => {
    const { code, detail } = refusal(text);
    expect(code).toBe("time-unreadable");
    expect(detail).toContain(reason);
  });

  it("is refused whatever it is, and never repeated to the reader (a failure prints its seed)", () => {
    const zone = zoneNamed("UTC");
    const words = fc.oneof(fc.string({ minLength: 12 }), fc.stringMatching(/^[A-Z][a-z]{7,20}, [A-Z][a-z]{2,9}$/));
    fc.assert(
      fc.property(words, (text) => {
        expect(() => readLocalTime(text, zone)).toThrow(expect.objectContaining({ code: "time-unreadable" }));
        if (text.trim() !== "") expect(refusal(text).detail).not.toContain(text);
      }),
    );
  });
});

describe("an instant shown as local time", () => {
  it.each([
    ["2026-01-05T13:15:00.000Z", "2026-01-05T08:15"],
    ["2026-01-05T13:15:30.000Z", "2026-01-05T08:15:30"],
    ["2026-01-05T13:15:00.020Z", "2026-01-05T08:15:00.020"],
    ["2026-01-05T05:00:00.000Z", "2026-01-05T00:00"],
    ["2026-11-01T05:30:00.000Z", "2026-11-01T01:30"],
    ["2026-11-01T06:30:00.000Z", "2026-11-01T01:30"],
    ["1969-12-31T23:59:59.000Z", "1969-12-31T18:59:59"],
  ])("%s is %s in New York", (instant, text) => {
    expect(showLocalTime(Date.parse(instant), zoneNamed("America/New_York"))).toBe(text);
  });

  it("is Temporal's local time in every zone, and reads back as itself or marked (a failure prints its seed)", () => {
    for (const name of everyZone) {
      const zone = zoneNamed(name);
      const check = (instant: number) => {
        const shown = showLocalTime(instant, zone);
        const local = zoned(instant, name).toPlainDateTime();
        const smallestUnit = local.millisecond > 0 ? "millisecond" : local.second > 0 ? "second" : "minute";
        expect({ name, shown }).toEqual({ name, shown: local.toString({ smallestUnit }) });
        const known = local.toZonedDateTime(name, { disambiguation: "earlier" }).epochMilliseconds;
        const later = local.toZonedDateTime(name, { disambiguation: "later" }).epochMilliseconds;
        expect(readLocalTime(shown, zone)).toEqual({ instant: known, repeated: known !== later });
        expect([known, later]).toContain(instant);
      };
      // From 1902, since the first year of the range may start with a local time of the year before.
      fc.assert(fc.property(instantsIn(name, Date.UTC(1902, 0, 1)), check), { numRuns: 4 });
    }
  });
});
