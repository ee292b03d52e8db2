import { describe, expect, it } from "vitest";
import {
  determine,
  determineWithHinges,
  differenceBetween,
  type EditionOptions,
  summaryOf,
} from "../../../src/domain/criteria/index.ts";
import { type Story, timelineOf } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { reviewed } from "./told/grown.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const skin = [["Staphylococcus epidermidis", ">100000"]] as const;
const urine = [{ day: 10, grew }] as const;
const fever = [{ day: 10, sign: "38.4" }] as const;
const dysuria = (...days: number[]) => days.map((day) => ({ day, sign: "dysuria" }) as const);
const fungi = [...grew, ["Candida albicans", "1000"], ["Candida auris", "1000"]] as const;

/** For each open point: the other reading, and a patient for whom it says something else. */
const cases: [Partial<EditionOptions>, Story][] = [
  [
    { catheterDaysFrom: "insertion" },
    { catheters: [[-5, null]], urine: [{ day: 2, grew }], signs: [{ day: 2, sign: "38.4" }] },
  ],
  [
    { absence: "goes-on" },
    {
      wards: [
        [1, 1, 7],
        [1, 9, null],
      ],
      catheters: [[2, null]],
      urine,
      signs: fever,
    },
  ],
  [{ yeastCountsAsSpecies: false }, { urine: [{ day: 10, grew: fungi }], signs: fever }],
  [{ sameSpeciesTwice: "two-organisms" }, { urine: [{ day: 10, grew: [...grew, ...grew, ...grew] }], signs: fever }],
  [
    { abutiCommensals: false },
    {
      urine: [{ day: 10, grew: skin }],
      blood: [
        { day: 10, grew: skin },
        { day: 11, grew: skin },
      ],
    },
  ],
  [{ urgencyOnRemovalDay: "never" }, { catheters: [[2, 10]], urine, signs: [{ day: 10, sign: "dysuria", hour: 20 }] }],
  [
    { timeframeAcrossStays: true },
    {
      wards: [
        [1, 1, 8],
        [1, 12, null],
      ],
      newStayAt: [1],
      urine: [
        { day: 5, grew },
        { day: 15, grew },
      ],
      signs: dysuria(5, 15),
    },
  ],
  [
    { elementInsideTimeframe: "later-elements" },
    {
      urine: [
        { day: 5, grew },
        { day: 20, grew },
      ],
      signs: dysuria(5, 18, 20),
    },
  ],
  [
    { readmission: "own-stay" },
    {
      wards: [
        [1, 1, 10],
        [2, 11, null],
      ],
      newStayAt: [1],
      urine: [{ day: 12, grew }],
      signs: dysuria(12),
    },
  ],
  [{ infantAge: "first-birthday" }, { ageYears: 1.2, urine, signs: [{ day: 10, sign: "vomiting" }] }],
  [
    { earlyFeverOver65: "dates-the-event" },
    {
      ageYears: 70,
      catheters: [[8, null]],
      urine,
      signs: [
        { day: 9, sign: "38.4" },
        { day: 10, sign: "38.6" },
      ],
    },
  ],
  [{ lookedFor: "every-day" }, { urine }],
  [{ undocumented: "not-known" }, { urine, lookedFor: false, signs: reviewed({ day: 7, through: 13, read: 13 }) }],
  [{ afterDeath: "used" }, { died: 9, urine, signs: fever }],
  [
    { repeatDays: 5 },
    {
      urine: [
        { day: 5, grew },
        { day: 15, grew },
      ],
      signs: dysuria(5, 15),
    },
  ],
  [{ windowDays: 1 }, { urine, signs: dysuria(7) }],
];

describe("every open point of the edition decides something", () => {
  it.each(cases.map(([options, story]) => [JSON.stringify(options), options, story] as const))(
    "%s",
    (_title, options, story) => {
      const changed = differenceBetween(timelineOf(story), us2024, {
        ...us2024,
        id: "us-other",
        options: { ...us2024.options, ...options },
      });
      expect(changed.length).toBeGreaterThan(0);
    },
  );

  it("the bloodstream period before the stay, though no outcome", () => {
    const timeline = timelineOf({ urine: [{ day: 1, grew }], signs: dysuria(1) });
    const wide = { ...us2024, options: { ...us2024.options, bloodstreamPeriodFrom: "window" } as const };
    const first = (edition: typeof us2024) => determine(timeline, edition)[0]?.event?.bloodstreamPeriod?.first ?? 0;
    expect(first(us2024) - first(wide)).toBe(1);
  });

  it("but for costovertebral angle pain of infants, which SUTI 1 takes at any age", () => {
    const options = { ...us2024.options, costovertebralInInfants: true };
    const timeline = timelineOf({ ageYears: 0, urine, signs: [{ day: 10, sign: "costovertebral-pain" }] });
    expect(differenceBetween(timeline, us2024, { ...us2024, options })).toEqual([]);
    const named = new Set([
      ...cases.flatMap(([one]) => Object.keys(one)),
      "bloodstreamPeriodFrom",
      "costovertebralInInfants",
    ]);
    expect([...named].sort()).toEqual(Object.keys(us2024.options).sort());
  });
});

it("tells which determinations two editions judge differently", () => {
  const story: Story = { catheters: [[1, 4]], urine, signs: dysuria(10) };
  const [changed] = differenceBetween(timelineOf(story), us2024, ecdc2017);
  expect([changed?.before, changed?.after].map((one) => one && summaryOf(one))).toEqual([
    "event, suti-1b, 10 March 2024, healthcare-associated, not catheter-associated, ward 1",
    "event, uti-a, 10 March 2024, healthcare-associated, catheter-associated, ward 1",
  ]);
  expect(differenceBetween(timelineOf(story), us2024, us2024)).toEqual([]);
});

it("shows both readings of a return within a day", () => {
  const story: Story = {
    wards: [
      [1, 1, 10],
      [2, 11, null],
    ],
    newStayAt: [1],
    urine: [{ day: 12, grew }],
    signs: dysuria(12),
  };
  const [chosen] = determineWithHinges(timelineOf(story), us2024);
  expect(chosen?.event?.onset).toBe("healthcare-associated");
  expect(chosen?.otherReading).toContain("present on admission");
});
