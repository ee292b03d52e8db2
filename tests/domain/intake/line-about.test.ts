import { describe, expect, it } from "vitest";
import { dayMs } from "../../../src/domain/days/day-number.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import {
  daysNamed,
  daysTouched,
  isDoubtful,
  type KnownStay,
  lineAbout,
  staysOfLines,
  wardsTouched,
} from "../../../src/domain/intake/line-about.ts";

const zone = zoneNamed("America/New_York");
/** 23:00 of a day in New York in summer, which is the next day in UTC. */
const late = (day: number) => (day + 1) * dayMs + 3 * 3_600_000;
const stay: KnownStay = {
  ...{ first: 100, last: 120 },
  wards: [
    { code: "A", first: 100, last: 110 },
    { code: "B", first: 110, last: null },
  ],
};

describe("what a line names", () => {
  it("is its stay, its ward and its days in the facility's zone, as far as they can be read", () => {
    const move = { stay: "S1", patient: "P1", ward: "A", from: late(20_000), to: null };
    const none = { catheter: null, wards: [] };
    expect(lineAbout("moves.csv", move, zone)).toEqual({
      ...{ stay: "S1", catheter: null, wards: ["A"], first: 20_000, last: null },
    });
    expect(lineAbout("daily-counts.csv", { ward: "A", day: 20_000 }, zone)).toMatchObject({
      first: 20_000,
      last: 20_000,
    });
    expect(lineAbout("catheters.csv", { removed: late(20_001) }, zone)).toEqual({
      ...{ ...none, stay: null, first: null, last: 20_001 },
    });
  });

  it("is of a culture or sign also the three days before, in which its event can lie", () => {
    expect(lineAbout("signs.csv", { stay: "S1", day: 20_000 }, zone)).toMatchObject({ first: 19_997, last: 20_000 });
    const review = { stay: "S1", day: 20_000, last_day: 20_004 };
    expect(lineAbout("signs.csv", review, zone)).toMatchObject({ first: 19_997, last: 20_004 });
    const specimen = lineAbout("specimens.csv", { stay: "S1", collected: late(20_000) }, zone);
    expect(specimen).toMatchObject({ first: 19_997, last: 20_000 });
    expect(lineAbout("reviews.csv", { day: late(20_000) }, zone)).toMatchObject({ first: 20_000, last: 20_000 });
  });
});

describe("the days that a line touches", () => {
  it.each([
    ["its own", { first: 104, last: 106 }, stay, { first: 104, last: 106, isOpen: false }],
    ["to the end of its stay", { first: 104, last: null }, stay, { first: 104, last: 120, isOpen: false }],
    ["from the beginning of its stay", { first: null, last: 106 }, stay, { first: 100, last: 106, isOpen: false }],
    ["those of its stay", { first: null, last: null }, stay, { first: 100, last: 120, isOpen: false }],
    [
      "to the latest day while its stay lasts, and later ones",
      ...[
        { first: 104, last: null },
        { ...stay, last: null },
        { first: 104, last: 130, isOpen: true },
      ],
    ],
    [
      "to the latest day without a stay, and later ones",
      ...[{ first: 104, last: null }, null, { first: 104, last: 130, isOpen: true }],
    ],
    ["its last alone without a stay", { first: null, last: 106 }, null, { first: 106, last: 106, isOpen: false }],
    [
      "all between its two when it ends before it begins",
      ...[{ first: 104, last: 90 }, null, { first: 90, last: 104, isOpen: false }],
    ],
    [
      "also those of its stay when one of its own is outside it",
      ...[{ first: 130, last: 112 }, stay, { first: 100, last: 130, isOpen: false }],
    ],
    [
      "its own on the first day of its stay, though a culture reaches three days back",
      ...[{ first: 97, last: 100 }, stay, { first: 97, last: 100, isOpen: false }],
    ],
  ] as const)("are %s", (_, about, of, days) => {
    expect(daysTouched(about, of, 130)).toMatchObject(days);
  });

  it("of a mistyped line are no days by which its ward is found", () => {
    const touched = daysTouched({ first: 130, last: 134 }, stay, 130);
    expect(touched).toEqual({ first: 100, last: 134, isOpen: false, own: { first: 130, last: 134 } });
    expect(daysTouched({ first: null, last: 99 }, stay, 130)?.own).toEqual({ first: 99, last: 99 });
  });

  it("are not known when neither the line nor a stay names any", () => {
    expect(daysTouched({ first: null, last: null }, null, 130)).toBeNull();
  });

  it("lie on the wards that it names, or on those of its stay on these days", () => {
    expect(wardsTouched({ wards: ["C"] }, stay, { first: 100, last: 120 })).toEqual(["C"]);
    expect(wardsTouched({ wards: [] }, stay, { first: 101, last: 109 })).toEqual(["A"]);
    expect(wardsTouched({ wards: [] }, stay, { first: 110, last: 130 })).toEqual(["A", "B"]);
    expect(wardsTouched({ wards: [] }, null, { first: 101, last: 109 })).toBeNull();
    expect(wardsTouched({ wards: [] }, stay, { first: 90, last: 99 })).toBeNull();
    expect(wardsTouched({ wards: [] }, stay, { first: 97, last: 100 }, "specimens.csv")).toEqual(["A"]);
    expect(wardsTouched({ wards: [] }, stay, { first: 97, last: 100 }, "catheters.csv")).toBeNull();
  });
});

describe("rejected lines of stays and moves", () => {
  const about = { stay: "S1", catheter: null, wards: [] as string[], first: 100, last: null as number | null };

  it("tell together from when to when their stay lasted and where", () => {
    const move = { ...about, wards: ["A"], first: 102, last: 104 };
    const lines = [
      { file: "moves.csv", about: move },
      { file: "stays.csv", about: { ...about, last: 110 } },
      { file: "catheters.csv", about: { ...about, first: 1 } },
    ];
    const wards = [{ code: "A", first: 102, last: 104 }];
    expect(staysOfLines(lines)).toEqual(new Map([["S1", { first: 100, last: 110, wards }]]));
    expect(staysOfLines([{ file: "stays.csv", about }]).get("S1")?.last).toBeNull();
  });

  it("name days from the earliest to the latest", () => {
    expect(
      daysNamed([
        { first: 5, last: null },
        { first: null, last: 3 },
      ]),
    ).toEqual({ first: 3, last: 5 });
    expect(daysNamed([{ first: null, last: null }])).toBeNull();
  });
});

it("a mark that tells a fact leaves nothing open; any other does", () => {
  expect(isDoubtful("catheters.csv", ["in-place-on-arrival", "absence-known"])).toBe(false);
  expect(isDoubtful("specimens.csv", ["in-place-on-arrival", "count-unreadable"])).toBe(true);
  // Definitions ask the day alone of a specimen or a sign; of a removal they may ask the hour.
  expect([isDoubtful("signs.csv", ["no-hour"]), isDoubtful("catheters.csv", ["no-hour"])]).toEqual([false, true]);
});
