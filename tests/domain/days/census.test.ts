import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { censusTime, day } from "../../../shared/day.ts";
import { type CensusTable, censusesWithin, censusInstant, censusTable } from "../../../src/domain/days/census.ts";
import { dayNumber, dayText } from "../../../src/domain/days/day-number.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import { everyZone, instantsIn } from "./every-zone.ts";

function number(text: string): number {
  return dayNumber(day.parse(text));
}

const utc = (instant: number | null) => (instant === null ? null : new Date(instant).toISOString().slice(0, 19));

function table(zone: string, changes: [string, string][], first: string, last: string): CensusTable {
  const parsed = changes.map(([from, time]) => ({ fromDay: number(from), time: censusTime.parse(time) }));
  return censusTable(zoneNamed(zone), parsed, number(first), number(last));
}

function rows({ days, instants }: CensusTable): string[] {
  return Array.from(days, (n, i) => `${dayText(n)} ${utc(instants[i] ?? null)}`);
}

describe("the census of a day", () => {
  // Source: IANA tz database 2025b, offsets and changes as `zdump -v` prints them.
  it.each([
    ["America/New_York", "2024-02-29", "00:00", "2024-02-29T05:00:00"],
    ["America/New_York", "2024-02-28", "24:00", "2024-02-29T05:00:00"],
    ["America/New_York", "2025-12-31", "24:00", "2026-01-01T05:00:00"],
    ["America/New_York", "2026-03-08", "02:30", "2026-03-08T07:00:00"],
    ["America/New_York", "2026-03-08", "12:00", "2026-03-08T16:00:00"],
    ["America/New_York", "2026-11-01", "01:30", "2026-11-01T05:30:00"],
    ["America/Sao_Paulo", "2018-11-04", "00:00", "2018-11-04T03:00:00"],
    ["America/Sao_Paulo", "2018-11-03", "24:00", "2018-11-04T03:00:00"],
    ["America/Sao_Paulo", "2018-02-17", "23:30", "2018-02-18T01:30:00"],
    ["America/Sao_Paulo", "2018-02-17", "24:00", "2018-02-18T03:00:00"],
    ["Australia/Lord_Howe", "2024-10-06", "02:15", "2024-10-05T15:30:00"],
    ["Australia/Lord_Howe", "2024-04-07", "01:45", "2024-04-06T14:45:00"],
    ["Pacific/Apia", "2011-12-29", "24:00", "2011-12-30T10:00:00"],
    ["Pacific/Apia", "2011-12-30", "00:00", null],
    ["Pacific/Apia", "2011-12-30", "12:00", null],
    ["Pacific/Apia", "2011-12-30", "24:00", null],
    ["Pacific/Apia", "2011-12-31", "00:00", "2011-12-30T10:00:00"],
    ["America/Nuuk", "2024-03-30", "23:30", "2024-03-31T01:00:00"],
    ["America/Nuuk", "2024-03-30", "24:00", "2024-03-31T01:00:00"],
    ["America/Nuuk", "2024-10-26", "23:30", "2024-10-27T00:30:00"],
    ["Europe/Dublin", "2024-03-31", "01:30", "2024-03-31T01:00:00"],
    ["Europe/Dublin", "2024-10-27", "01:30", "2024-10-27T00:30:00"],
    ["Antarctica/Troll", "2024-03-31", "02:00", "2024-03-31T01:00:00"],
    ["Antarctica/Troll", "2024-10-27", "02:00", "2024-10-27T00:00:00"],
    ["Africa/Casablanca", "2024-04-14", "02:30", "2024-04-14T02:00:00"],
    ["America/Havana", "2024-11-03", "00:00", "2024-11-03T04:00:00"],
    ["America/Havana", "2024-11-02", "24:00", "2024-11-03T04:00:00"],
    ["America/St_Johns", "2010-11-06", "24:00", "2010-11-07T02:30:00"],
    ["Asia/Kathmandu", "1986-01-01", "00:00", "1985-12-31T18:30:00"],
    ["Asia/Kathmandu", "2026-01-01", "00:00", "2025-12-31T18:15:00"],
  ])("in %s on %s at %s is %s UTC", (zone, text, time, instant) => {
    expect(utc(censusInstant(zoneNamed(zone), number(text), censusTime.parse(time)))).toBe(instant);
  });

  it("is the first minute that a walk along the clock finds, in every zone (a failure prints its seed)", () => {
    const times = fc.oneof(
      fc.constantFrom("00:00", "24:00", "23:30", "02:30"),
      fc.integer({ min: 0, max: 1439 }).map((m) => new Date(m * 60_000).toISOString().slice(11, 16)),
    );
    for (const name of everyZone) {
      const zone = zoneNamed(name);
      // Since 1973 all offsets are whole minutes, so that a walk by minutes cannot step over anything.
      const instants = instantsIn(name, Date.UTC(1973, 0, 1));
      fc.assert(
        fc.property(fc.constant(name), instants, times, (_, instant, text) => {
          const n = Math.floor(instant / 86_400_000);
          expect(utc(censusInstant(zone, n, censusTime.parse(text)))).toBe(utc(walk(name, n, text)));
        }),
        { numRuns: 2 },
      );
    }
  });
});

/** The census by a walk along the clock as the runtime writes it, minute by minute. */
function walk(name: string, n: number, time: string): number | null {
  const clock = new Intl.DateTimeFormat("sv-SE", { timeZone: name, dateStyle: "short", timeStyle: "medium" });
  const wanted = time === "24:00" ? `${dayText(n + 1)} 00:00:00` : `${dayText(n)} ${time}:00`;
  const start = n * 86_400_000 - 15 * 3_600_000;
  let found: number | null = null;
  let isThere = false;
  for (let at = start; at < start + 63 * 3_600_000 && !(isThere && found !== null); at += 60_000) {
    const shown = clock.format(at);
    isThere ||= shown.startsWith(dayText(n));
    if (found === null && shown >= wanted) found = at;
  }
  return isThere ? found : null;
}

describe("a table of censuses", () => {
  it("leaves out a date that the zone skipped", () => {
    // Source: IANA tz database 2025b: Apia went from 2011-12-29 24:00 (-10) to 2011-12-31 00:00 (+14).
    expect(rows(table("Pacific/Apia", [["2000-01-01", "12:00"]], "2011-12-29", "2012-01-01"))).toEqual([
      "2011-12-29 2011-12-29T22:00:00",
      "2011-12-31 2011-12-30T22:00:00",
      "2012-01-01 2011-12-31T22:00:00",
    ]);
  });

  it("changes the census time from its day on, whatever the order of the changes, and the first has no beginning", () => {
    const changes: [string, string][] = [
      ["2026-02-01", "00:00"],
      ["2026-01-01", "24:00"],
      ["2026-02-02", "12:00"],
    ];
    expect(rows(table("UTC", changes, "2025-12-31", "2026-01-01"))).toEqual([
      "2025-12-31 2026-01-01T00:00:00",
      "2026-01-01 2026-01-02T00:00:00",
    ]);
    expect(rows(table("UTC", changes, "2026-01-31", "2026-02-02"))).toEqual([
      "2026-01-31 2026-02-01T00:00:00",
      "2026-02-01 2026-02-01T00:00:00",
      "2026-02-02 2026-02-02T12:00:00",
    ]);
  });

  it("is empty for no days, and cannot be made without a census time or with two for one day", () => {
    expect(rows(table("UTC", [["2026-01-01", "00:00"]], "2026-01-02", "2026-01-01"))).toEqual([]);
    expect(() => table("UTC", [], "2026-01-01", "2026-01-02")).toThrow(Error);
    const twice: [string, string][] = [
      ["2026-01-01", "00:00"],
      ["2026-01-01", "12:00"],
    ];
    expect(() => table("UTC", twice, "2026-01-01", "2026-01-02")).toThrow(Error);
  });
});

describe("the censuses within a stretch of time", () => {
  const twoAtOnce = () =>
    table(
      "UTC",
      [
        ["2026-01-01", "24:00"],
        ["2026-02-01", "00:00"],
      ],
      "2026-01-30",
      "2026-02-03",
    );

  // The start counts and the end does not: whoever leaves at the census instant is not there. Worked out by hand.
  it.each([
    ["2026-02-01T00:00Z", "2026-02-01T00:01Z", ["2026-01-31", "2026-02-01"]],
    ["2026-01-31T23:59Z", "2026-02-01T00:00Z", []],
    ["2026-02-01T00:01Z", "2026-02-02T00:00Z", []],
    ["2026-02-01T00:01Z", "2026-02-02T00:00:00.001Z", ["2026-02-02"]],
    ["2026-01-31T00:00Z", "2026-02-02T00:00Z", ["2026-01-30", "2026-01-31", "2026-02-01"]],
    ["2026-02-02T00:00Z", "2026-02-02T00:00Z", []],
    ["2020-01-01T00:00Z", "2020-01-02T00:00Z", []],
    ["2030-01-01T00:00Z", "2030-01-02T00:00Z", []],
  ])("from %s to %s are those of %j", (start, end, days) => {
    const made = twoAtOnce();
    const { from, to } = censusesWithin(made, Date.parse(start), Date.parse(end));
    expect(Array.from(made.days.slice(from, to), dayText)).toEqual(days);
  });

  it("may have no end, but cannot end before they start", () => {
    expect(censusesWithin(twoAtOnce(), Date.parse("2026-02-02T00:00Z"), Number.POSITIVE_INFINITY)).toEqual({
      from: 3,
      to: 5,
    });
    expect(() => censusesWithin(twoAtOnce(), 1, 0)).toThrow(Error);
    expect(() => censusesWithin(twoAtOnce(), Number.NaN, 0)).toThrow(Error);
  });

  it("are the ones that a look at each finds, over changes of time and clocks (a failure prints its seed)", () => {
    const zones = fc.constantFrom(
      "America/New_York",
      "America/Nuuk",
      "Pacific/Apia",
      "America/St_Johns",
      "America/Havana",
    );
    const times = fc.constantFrom("00:00", "02:30", "12:00", "23:30", "24:00");
    const changes = fc.uniqueArray(fc.tuple(fc.nat(800), times), { selector: ([d]) => d, minLength: 1, maxLength: 6 });
    const stretch = fc.tuple(fc.nat(800 * 48), fc.nat(20 * 48));
    fc.assert(
      fc.property(zones, changes, stretch, (zone, list, [start, length]) => {
        const first = number("2010-06-01");
        const change = list.map(([d, time]) => ({ fromDay: first + d, time: censusTime.parse(time) }));
        const made = censusTable(zoneNamed(zone), change, first, first + 800);
        const from = first * 86_400_000 + start * 1_800_000;
        const to = from + length * 1_800_000;
        const known = made.days.filter((_, i) => from <= (made.instants[i] ?? 0) && (made.instants[i] ?? 0) < to);
        const found = censusesWithin(made, from, to);
        expect(made.days.slice(found.from, found.to)).toEqual(known);
        expect(found.to - found.from).toBe(known.length);
        expect(made.instants).toEqual(made.instants.toSorted());
        expect(made.days).toEqual(made.days.toSorted());
        expect(made.days.length).toBe(zone === "Pacific/Apia" ? 800 : 801);
      }),
    );
  });
});
