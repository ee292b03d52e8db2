import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const sentences = (story: Story) =>
  determine(timelineOf(story), us2024).flatMap(({ derivation }) => derivation.map(({ sentence }) => sentence));

it("says what each answer of a question would come to", () => {
  const story: Story = {
    catheters: [[2, null]],
    urine: [{ day: 10, grew: [["Novelia", ">100000"]] }],
    signs: [{ day: 9, sign: "38.4" }],
  };
  expect(sentences(story)).toContain(
    "What “Novelia” is decides the answer. A bacterium: SUTI 1a of 9 March 2024; a yeast or mold, a parasite, virus or other organism or mixed flora: no infection.",
  );
});

it("says which answers leave the culture open for another reason", () => {
  const story: Story = { urine: [{ day: 10, grew: [["E. coli", "heavy growth"]] }], lookedFor: false };
  expect(sentences(story)).toContain(
    "How much E. coli grew decides the answer. At least 100,000 CFU/ml: still open; less: no infection.",
  );
});

it("says that an infection would be after discharge", () => {
  const story: Story = {
    wards: [[1, 1, 10]],
    urine: [{ day: 13, grew: [["E. coli", null]] }],
    signs: [{ day: 12, sign: "dysuria" }],
  };
  expect(sentences(story).join("\n")).toContain("SUTI 1b of 12 March 2024, not reported after discharge");
});
