import fc from "fast-check";
import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { europeanCounts, europeanOrganisms } from "./european-grown.ts";
import { randomStory } from "./random-story.ts";

const day = fc.integer({ min: 5, max: 16 });
const count = fc.constantFrom(...Object.keys(europeanCounts));
const name = fc.constantFrom(...Object.keys(europeanOrganisms));

/** Few or many of one or two, often the same, so that cultures repeat each other. */
const grown = fc.oneof(
  { weight: 4, arbitrary: fc.constant([["Escherichia coli", ">100000"]] as [string, string][]) },
  { weight: 4, arbitrary: fc.constantFrom("1000", "100", "50").map((few) => [["Escherichia coli", few]]) },
  { weight: 4, arbitrary: fc.array(fc.tuple(name, count), { maxLength: 3 }) },
) as fc.Arbitrary<[string, string][]>;

const specimen: fc.Arbitrary<StorySpecimen> = fc.record({
  day,
  grew: grown,
  status: fc.oneof(
    { weight: 8, arbitrary: fc.constant("final" as const) },
    { weight: 2, arbitrary: fc.constantFrom("pending", "preliminary", "corrected", "withdrawn") },
  ),
  method: fc.oneof(
    { weight: 15, arbitrary: fc.constant("culture" as const) },
    { weight: 1, arbitrary: fc.constantFrom("screening", "non-culture-test", "catheter-tip") },
  ),
});

const finding = fc.tuple(
  day,
  fc.constantFrom(
    ...(["leukocyte-esterase-or-nitrite", "pyuria", "gram-stain", "physician-diagnosis"] as const),
    ...(["effective-antimicrobial", "effective-antimicrobial", "effective-antimicrobial"] as const),
  ),
);

/** A patient with findings in urine, and with a discharge that may be missing though every ward was left. */
export const randomEuropeanStory: fc.Arbitrary<Story> = fc
  .record({
    story: randomStory,
    urine: fc.array(specimen, { minLength: 1, maxLength: 3 }),
    findings: fc.array(finding, { maxLength: 2 }),
    discharged: fc.oneof({ weight: 9, arbitrary: fc.constant(true) }, { weight: 1, arbitrary: fc.constant(false) }),
  })
  .map(({ story, ...rest }) => ({ ...story, ...rest }));
