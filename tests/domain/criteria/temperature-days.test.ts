import { expect, it } from "vitest";
import { determine, restsOnFewTemperatures, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story, StorySign } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { coli, reviewed } from "./told/grown.ts";

const on = (...days: number[]) => days.map((day): StorySign => ({ day, sign: "37.0" }));
const told = (story: Story, options: Partial<typeof us2024.options> = {}) => {
  const edition = { ...us2024, options: { ...us2024.options, ...options } };
  const [one] = determine(timelineOf({ urine: [{ day: 10, grew: coli }], catheters: [[2, null]], ...story }), edition);
  if (!one) throw new Error("one culture has one determination");
  const sentence = one.derivation.find((step) => step.sentence.startsWith("Temperature on"))?.sentence;
  return { outcome: one.outcome, sentence, isFew: restsOnFewTemperatures(one) };
};
const enough = " By the reading in force, one day is enough to know that there was no fever.";

it("names the days with and without a temperature, and that one day is enough by the reading in force", () => {
  expect(told({})).toEqual({
    outcome: "not-met",
    sentence: `Temperature on 1 of 7 days: 10 March 2024; none on 7 March to 9 March 2024 and 11 March to 13 March 2024.${enough}`,
    isFew: true,
  });
});

it("counts a determination that rests on fewer than half of the days, and no other", () => {
  expect(told({ signs: on(8, 11) }).isFew).toBe(true);
  expect(told({ signs: on(8, 9, 11) }).isFew).toBe(false);
  const every = told({ signs: on(7, 8, 9, 11, 12, 13) });
  expect(every).toEqual({ outcome: "not-met", sentence: undefined, isFew: false });
});

it("is said of an infection by another sign, which does not rest on it", () => {
  const event = told({ signs: [{ day: 9, sign: "suprapubic-tenderness" }] });
  expect(event).toMatchObject({ outcome: "event", isFew: false });
  expect(event.sentence).toMatch(/^Temperature on 1 of 7 days/);
});

it("is said of bacteremia without symptoms, which rests on it", () => {
  expect(told({ blood: [{ day: 11, grew: coli }] })).toMatchObject({ outcome: "event", isFew: true });
});

it("says of a chart review that it measures nothing", () => {
  const signs = reviewed({ day: 7, through: 13, read: 14 });
  expect(told({ signs, lookedFor: false })).toMatchObject({
    sentence: "Temperature on 0 of 7 days; none on 7 March to 13 March 2024.",
    isFew: true,
  });
});

it("is not said where fever is there, would be no element, or may still come", () => {
  expect(told({ signs: [{ day: 9, sign: "38.4" }] }).sentence).toBeUndefined();
  expect(told({ ageYears: 70, catheters: [] }).sentence).toBeUndefined();
  expect(told({ knownThrough: 12 }).sentence).toBeUndefined();
});

it("leaves out days after death, and says nothing of one day where each day is needed", () => {
  expect(told({ died: 11 }).sentence).toContain("Temperature on 1 of 5 days");
  expect(told({}, { lookedFor: "every-day" }).sentence).not.toContain("enough");
});
