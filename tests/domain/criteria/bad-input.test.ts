import { describe, expect, it } from "vitest";
import { type Determination, determine } from "../../../src/domain/criteria/index.ts";
import { type Story, timelineOf } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const catheters = [[2, null]] as const;

function only(story: Story): Determination {
  const [first, ...others] = determine(timelineOf(story), us2024);
  if (!first || others.length > 0) throw new Error("there is more or less than one determination");
  return first;
}

const lookUps = ({ derivation }: Determination) => derivation.flatMap(({ lookUp }) => lookUp ?? []).join(" ");

describe("what a record can lack or contradict is told, never a silent no", () => {
  it.each<[string, Story, Determination["outcome"], RegExp]>([
    ["a specimen of the future", { urine: [{ day: 50, grew }], knownThrough: 40 }, "set-aside", /time of collection/],
    [
      "an organism without a count",
      { urine: [{ day: 10, grew: [["E. coli", null]] }], signs: [{ day: 10, sign: "38.4" }] },
      "cannot-tell",
      /how much/,
    ],
    [
      "a second catheter that ends with the first, or perhaps later",
      {
        catheters: [
          [0, 4],
          [3, 4],
        ],
        latestRemoval: 6,
        wards: [[1, 1, 4]],
        urine: [{ day: 6, grew }],
        signs: [{ day: 6, sign: "frequency" }],
      },
      "cannot-tell",
      /removed/,
    ],
    [
      "an organism nobody knows",
      { urine: [{ day: 10, grew: [["Novelia", ">100000"]] }], signs: [{ day: 10, sign: "38.4" }] },
      "cannot-tell",
      /Choose a group/,
    ],
    [
      "a temperature in the other unit",
      { catheters, urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "101.2" }] },
      "cannot-tell",
      /readable value/,
    ],
    [
      "dysuria on the day of removal without an hour",
      { catheters: [[2, 10]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "dysuria" }] },
      "cannot-tell",
      /hour of urgency/,
    ],
    [
      "a removal before the insertion",
      { catheters: [[8, 5]], urine: [{ day: 8, grew }], signs: [{ day: 8, sign: "38.4" }] },
      "cannot-tell",
      /Correct the insertion/,
    ],
    [
      "a birth date nobody recorded, where fever depends on it",
      { ageYears: null, urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] },
      "cannot-tell",
      /birth date/,
    ],
    [
      "a ward without a setting",
      { wards: [[1, 1, null, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] },
      "cannot-tell",
      /setting/,
    ],
    [
      "a window that is not over",
      { catheters, urine: [{ day: 10, grew }], knownThrough: 11 },
      "cannot-tell",
      /Wait until 13 March 2024/,
    ],
    ["a stay nobody recorded", { wards: [[1, 30, null]], urine: [{ day: 10, grew }] }, "set-aside", /Check the stays/],
    [
      "a category of the laboratory on both sides of the limit",
      { urine: [{ day: 10, grew: [["E. coli", "50,000-100,000"]] }], signs: [{ day: 10, sign: "38.4" }] },
      "cannot-tell",
      /whether at least 100,000/,
    ],
  ])("%s", (_title, story, outcome, lookUp) => {
    const found = only(story);
    expect([found.outcome, found.event]).toEqual([outcome, null]);
    expect(lookUps(found)).toMatch(lookUp);
  });

  it("three organisms and a withdrawn result are closed with the reason", () => {
    const three = only({ urine: [{ day: 10, grew: [...grew, ["K. pneumoniae", "1000"], ["E. faecalis", "1000"]] }] });
    expect([three.outcome, three.derivation[0]?.sentence]).toEqual([
      "not-usable",
      expect.stringContaining("3 species"),
    ]);
    const withdrawn = only({ urine: [{ day: 10, grew, status: "withdrawn" }] });
    expect([withdrawn.outcome, withdrawn.derivation[0]?.sentence]).toEqual([
      "set-aside",
      expect.stringContaining("withdrawn"),
    ]);
  });

  it("a birth date does not matter where no rule asks for it", () => {
    const found = only({ ageYears: null, catheters, urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] });
    expect(found.event?.criterion).toBe("suti-1a");
  });

  it("names the evidence that came nearest", () => {
    const found = only({ catheters, urine: [{ day: 10, grew }], signs: [{ day: 6, sign: "38.4" }] });
    const nearest = found.derivation.find(({ rule }) => rule === "suti-1a")?.nearest;
    expect(nearest).toBe("Nearest: a temperature of 38.4 °C on 6 March 2024 lies one day before the window opened.");
  });

  it("an event tells which undetermined culture could make it a repeat", () => {
    const urine = [
      { day: 8, status: "pending" },
      { day: 12, grew },
    ] as const;
    const [, event] = determine(timelineOf({ catheters, urine, signs: [{ day: 12, sign: "38.4" }] }), us2024);
    expect([event?.outcome, event?.dependsOn.map(({ id }) => id)]).toEqual(["event", [1]]);
  });

  it("waits for the day after a discharge, and no longer", () => {
    const left: Story = { wards: [[1, 1, 10]], urine: [{ day: 9, grew }] };
    const outcomes = [10, 11].map((knownThrough) => only({ ...left, knownThrough }).outcome);
    expect(outcomes).toEqual(["cannot-tell", "not-met"]);
  });

  it("takes a common commensal of two days one after the other, and not of days further apart", () => {
    const skin = [["Staphylococcus epidermidis", ">100000"]] as const;
    const outcomes = [10, 11, 12].map((day) => {
      const blood = [10, day].map((each) => ({ day: each, grew: skin }));
      return only({ catheters, urine: [{ day: 10, grew: skin }], blood }).outcome;
    });
    expect(outcomes).toEqual(["event", "event", "not-met"]);
  });
});
