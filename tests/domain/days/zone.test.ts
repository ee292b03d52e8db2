import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { day } from "../../../shared/day.ts";
import { dayMs, dayNumber, dayText } from "../../../src/domain/days/day-number.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import { clockChanges } from "./clock-changes.ts";
import { everyZone, instantsIn, plainDate, zoned } from "./every-zone.ts";

describe("a zone", () => {
  it("is the same object for the same name", () => {
    expect(zoneNamed("America/New_York")).toBe(zoneNamed("America/New_York"));
  });

  // Source: the file "backward" of the IANA tz database links these older names to the newer ones.
  it.each([
    ["US/Eastern", "America/New_York"],
    ["Asia/Katmandu", "Asia/Kathmandu"],
    ["America/Godthab", "America/Nuuk"],
  ])("answers to its older name %s as to %s", (older, newer) => {
    const instant = Date.UTC(2024, 6, 1);
    expect(zoneNamed(newer).offsetAt(instant)).toBe(zoned(instant, newer).offsetNanoseconds / 1_000_000);
    expect(zoneNamed(older).offsetAt(instant)).toBe(zoneNamed(newer).offsetAt(instant));
    expect(zoneNamed(older).name).toBe(older);
  });

  it.each(["Alder/Bay", "", "New York", "America/New_York ", "local"])("named %j is refused by code", (name) => {
    expect(() => zoneNamed(name)).toThrow(expect.objectContaining({ code: "zone-unknown" }));
  });

  it.each(clockChanges)("$zone changes its local time and date at $at ($kind)", ({ zone, at, before, after }) => {
    const { localAt, dayOf } = bound(zone);
    const instant = Date.parse(at);
    expect(localAt(instant)).toBe(Date.parse(`${after}Z`));
    expect(dayText(dayOf(instant))).toBe(after.slice(0, 10));
    expect(localAt(instant - 1000)).toBe(Date.parse(`${before}Z`));
    expect(dayText(dayOf(instant - 1))).toBe(before.slice(0, 10));
  });
});

function bound(name: string) {
  const zone = zoneNamed(name);
  return { localAt: (at: number) => zone.localAt(at), dayOf: (at: number) => zone.dayOf(at) };
}

describe("the start of a day", () => {
  // Source: IANA tz database 2025b, offsets and changes as `zdump -v` prints them.
  it.each([
    ["America/New_York", "2024-02-29", "2024-02-29T05:00:00"],
    ["America/New_York", "2026-01-01", "2026-01-01T05:00:00"],
    ["America/New_York", "2026-03-09", "2026-03-09T04:00:00"],
    ["America/Sao_Paulo", "2018-11-04", "2018-11-04T03:00:00"],
    ["Pacific/Apia", "2011-12-29", "2011-12-29T10:00:00"],
    ["Pacific/Apia", "2011-12-30", null],
    ["Pacific/Apia", "2011-12-31", "2011-12-30T10:00:00"],
    ["Pacific/Kiritimati", "1994-12-31", null],
    ["Pacific/Kiritimati", "1995-01-01", "1994-12-31T10:00:00"],
    ["Pacific/Kwajalein", "1993-08-21", null],
    ["Pacific/Kwajalein", "1969-09-30", "1969-09-29T13:00:00"],
    ["Pacific/Kwajalein", "1969-10-01", "1969-10-01T12:00:00"],
    ["America/Havana", "2024-11-03", "2024-11-03T04:00:00"],
    ["America/Havana", "2024-03-10", "2024-03-10T05:00:00"],
    ["America/St_Johns", "2010-11-07", "2010-11-07T02:30:00"],
    ["America/Nuuk", "2024-03-31", "2024-03-31T01:00:00"],
    ["America/Toronto", "1919-03-31", "1919-03-31T04:30:00"],
    ["Asia/Kathmandu", "1986-01-01", "1985-12-31T18:30:00"],
    ["Asia/Kathmandu", "1986-01-02", "1986-01-01T18:15:00"],
    ["America/Recife", "2000-10-08", "2000-10-08T03:00:00"],
  ])("in %s of %s is %s UTC", (name, text, utc) => {
    const start = zoneNamed(name).startOfDay(dayNumber(day.parse(text)));
    expect(start === null ? null : new Date(start).toISOString().slice(0, 19)).toBe(utc);
  });
});

describe("every zone, from 1900 to 2100 (a failure prints its seed)", () => {
  it("has the dates and starts of days that Temporal has", () => {
    forEveryZone((name, instant) => {
      const zone = zoneNamed(name);
      const n = zone.dayOf(instant);
      expect(dayText(n)).toBe(zoned(instant, name).toPlainDate().toString());
      for (const near of [n - 1, n, n + 1]) {
        const known = plainDate(near).toZonedDateTime(name);
        const exists = known.toPlainDate().equals(plainDate(near));
        expect(zone.startOfDay(near)).toBe(exists ? known.epochMilliseconds : null);
      }
    });
  });

  it("has no earlier instant with a later local time than the first one from it, looking back by quarter hours", () => {
    forEveryZone((name, instant) => {
      const zone = zoneNamed(name);
      const local = Math.floor(instant / 60_000) * 60_000;
      const first = zone.firstInstantFrom(local);
      expect(first + offsetMs(first, name)).toBeGreaterThanOrEqual(local);
      for (let back = first - 1; back > first - 1.2 * dayMs; back -= 900_000) {
        expect(back + offsetMs(back, name)).toBeLessThan(local);
      }
    }, 1);
  });

  it("shows a local time at the instants that Temporal finds for it", () => {
    forEveryZone((name, instant) => {
      const local = zoned(instant, "UTC").toPlainDateTime();
      const known = (["earlier", "later"] as const)
        .map((disambiguation) => local.toZonedDateTime(name, { disambiguation }))
        .filter((found) => found.toPlainDateTime().equals(local))
        .map((found) => found.epochMilliseconds);
      expect(zoneNamed(name).instantsAt(instant)).toEqual([...new Set(known)]);
    });
  });
});

function offsetMs(instant: number, name: string): number {
  return zoned(instant, name).offsetNanoseconds / 1e6;
}

function forEveryZone(check: (name: string, instant: number) => void, numRuns = 4): void {
  for (const name of everyZone) fc.assert(fc.property(fc.constant(name), instantsIn(name), check), { numRuns });
}
