import fc from "fast-check";
import { expect, it } from "vitest";
import { couldMatter } from "../../../src/domain/criteria/could-matter.ts";
import { determine, type Edition, summaryOf } from "../../../src/domain/criteria/index.ts";
import { type Story, timelineOf } from "../../../src/domain/criteria/story.ts";
import { worldsOf } from "../../../src/domain/criteria/world.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { randomEuropeanStory } from "./second/random-european-story.ts";
import { randomStory } from "./second/random-story.ts";
import { strip } from "./second/strip.ts";

const runs = Number(process.env.READINGS ?? 150);

/** What is reported of every determination. */
function told(story: Story, edition: Edition): string[] {
  return determine(timelineOf(story), edition).map((one) => {
    return JSON.stringify([
      summaryOf(one),
      one.event?.pathogens,
      one.event?.addedPathogens,
      one.event?.secondaryBloodstream,
    ]);
  });
}

it.each<[string, Edition, fc.Arbitrary<Story>]>([
  ["us-2024", us2024, randomStory],
  ["ecdc-2017", ecdc2017, randomEuropeanStory],
])(
  "%s: a reading that is not tried changes nothing",
  (_id, edition, stories) => {
    const tried = new Set<string>();
    const property = fc.property(stories, (story) => {
      const timeline = timelineOf(story);
      const determined = determine(timeline, edition);
      const [world] = worldsOf(timeline, edition);
      if (!world) throw new Error("no world");
      const before = told(story, edition);
      for (const { option, otherValues } of edition.openPoints) {
        if (couldMatter(option, { timeline, edition, world, determined })) {
          tried.add(option);
          continue;
        }
        for (const value of otherValues) {
          const other = { ...edition, options: { ...edition.options, [option]: value } };
          expect(told(story, other), `${option}\n${strip(story)}`).toEqual(before);
        }
      }
    });
    fc.assert(property, { numRuns: runs });
    const never = edition.openPoints.map(({ option }) => option).filter((option) => !tried.has(option));
    expect(never).toEqual(edition === us2024 ? ["costovertebralInInfants"] : []);
  },
  120_000,
);
