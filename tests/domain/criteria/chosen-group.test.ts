import { expect, it } from "vitest";
import { chosenOrganism, determine, type OrganismIdentity, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Novelia rara", ">100000"]] as const;
const unknown: OrganismIdentity = { key: "Novelia rara", group: null, genus: null };
const bacterium = chosenOrganism("Novelia rara", "bacterium");
const yeast = chosenOrganism("Novelia rara", "yeast-or-mold");

/** What comes of one name in urine and blood, for which a person chose a group in the one and perhaps in the other. */
function judged(inBlood: OrganismIdentity, signs: Story["signs"] = []) {
  const timeline = timelineOf({
    catheters: [[2, null]],
    urine: [{ day: 10, grew }],
    blood: [{ day: 10, grew }],
    signs,
  });
  const specimens = timeline.specimens.map((one) => {
    const identity = one.kind === "urine" ? bacterium : inBlood;
    return { ...one, organisms: one.organisms.map((organism) => ({ ...organism, identity })) };
  });
  const [found] = determine({ ...timeline, specimens }, us2024);
  return [found?.outcome, found?.event?.criterion, found?.event?.secondaryBloodstream];
}

it("the same name in blood matches once somebody has said that it is a bacterium there too", () => {
  expect(judged(bacterium)).toEqual(["event", "abuti", [101]]);
  expect(judged(unknown)).toEqual(["cannot-tell", undefined, undefined]);
  expect(judged(yeast)).toEqual(["not-met", undefined, undefined]);
});

it("and makes a bloodstream infection secondary only then", () => {
  const fever = [{ day: 10, sign: "38.4" }] as const;
  expect([bacterium, unknown, yeast].map((inBlood) => judged(inBlood, fever))).toEqual([
    ["event", "suti-1a", [101]],
    ["event", "suti-1a", []],
    ["event", "suti-1a", []],
  ]);
});

it("nor does a bacterium in blood match what somebody called a yeast in urine", () => {
  const timeline = timelineOf({
    catheters: [[2, null]],
    urine: [{ day: 10, grew: [["Escherichia coli", ">100000"], ...grew] }],
    blood: [{ day: 10, grew }],
    signs: [{ day: 10, sign: "38.4" }],
  });
  const specimens = timeline.specimens.map((one) => ({
    ...one,
    organisms: one.organisms.map((organism) =>
      organism.name === "Novelia rara" ? { ...organism, identity: one.kind === "urine" ? yeast : bacterium } : organism,
    ),
  }));
  const [found] = determine({ ...timeline, specimens }, us2024);
  expect([found?.outcome, found?.event?.secondaryBloodstream]).toEqual(["event", []]);
});
