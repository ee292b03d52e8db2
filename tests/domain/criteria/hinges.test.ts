import { expect, it } from "vitest";
import { determineWithHinges, type Edition } from "../../../src/domain/criteria/index.ts";
import { type Story, timelineOf } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

function first(story: Story, edition: Edition = us2024) {
  const [found] = determineWithHinges(timelineOf(story), edition);
  if (!found) throw new Error("no determination");
  return found;
}

/** Over 65, a fever before the catheter was eligible, and one after it. */
const early: Story = {
  ageYears: 70,
  catheters: [[8, null]],
  urine: [{ day: 10, grew }],
  signs: [
    { day: 9, sign: "38.4" },
    { day: 10, sign: "38.6" },
  ],
};

it("names the point, both readings, the evidence set aside with its entry, and the other answer", () => {
  const { hinges, derivation, otherReading } = first(early);
  expect(hinges).toEqual([
    {
      option: "earlyFeverOver65",
      point: "Over 65, fever before the catheter is eligible and another element after",
      reading: "The early fever is no element and dates nothing",
      otherReading: "It dates the event, which then is not catheter-associated",
      otherAnswer: "SUTI 1b of 9 March 2024, healthcare-associated, not catheter-associated, ward 1",
      changesCauti: true,
      setAside: "temperature of 38.4 °C on 9 March 2024",
      evidence: [{ kind: "sign", id: 1 }],
    },
  ]);
  expect(derivation.at(-1)).toMatchObject({ rule: "suti-1b", status: "noted", evidence: [{ kind: "sign", id: 1 }] });
  expect(derivation.at(-1)?.sentence).toContain("Set aside by it: temperature of 38.4 °C on 9 March 2024.");
  expect(otherReading).toBe(derivation.at(-1)?.sentence);
});

it("where another reading than the default is in force, the default is the other", () => {
  const options = { ...us2024.options, earlyFeverOver65: "dates-the-event" } as const;
  const [hinge] = first(early, { ...us2024, options }).hinges;
  expect(hinge).toMatchObject({
    reading: "It dates the event, which then is not catheter-associated",
    otherReading: "The early fever is no element and dates nothing",
    otherAnswer: "SUTI 1a of 10 March 2024, healthcare-associated, catheter-associated, ward 1",
  });
});

it("an answer that no reading changes has no hinge", () => {
  const found = first({ catheters: [[2, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] });
  expect([found.hinges, found.otherReading]).toEqual([[], null]);
});

it("what cannot be used by one reading alone does not close without a person", () => {
  const yeasts = [...grew, ["Candida albicans", "1000"], ["Candida auris", "1000"]] as const;
  const found = first({
    catheters: [[2, null]],
    urine: [{ day: 10, grew: yeasts }],
    signs: [{ day: 10, sign: "38.4" }],
  });
  expect([found.outcome, found.closes]).toEqual(["not-usable", false]);
  expect(found.hinges.map(({ option }) => option)).toEqual(["yeastCountsAsSpecies"]);
});

it("a sign that was looked for on one day of the window alone hinges on that reading", () => {
  const found = first({ catheters: [[2, null]], urine: [{ day: 10, grew }] });
  expect(found.hinges).toMatchObject([{ option: "lookedFor", otherAnswer: "cannot be determined yet" }]);
});

it("secondary bloodstream infection is a part of the answer", () => {
  const found = first({
    ...{ urine: [{ day: 1, grew }], signs: [{ day: 1, sign: "dysuria" }] },
    blood: [{ day: -2, grew: [["Escherichia coli", null]] }],
  });
  expect(found.hinges.map(({ option }) => option)).toContain("bloodstreamPeriodFrom");
});
