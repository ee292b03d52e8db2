import { expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { infectionFromDay3 } from "../../../src/domain/criteria/infection-from-day-3.ts";
import { type Story, storyDay } from "../../../src/domain/criteria/story.ts";
import { worldsOf } from "../../../src/domain/criteria/world.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";

/** The onset on a day in the last of a patient's stays. */
function onset(day: number, story: Story) {
  const [world] = worldsOf(timelineOf(story), ecdc2017);
  const stay = world?.episodes.at(-1);
  if (!world || !stay) throw new Error("there is no stay");
  return infectionFromDay3.onsetOf(storyDay(day), stay, world);
}
const own = "healthcare-associated";
const brought = "present-on-admission";
const stays = (left: number, back: number, to: number | null = null): Story => ({
  wards: [
    [1, 1, left],
    [2, back, to],
  ],
  newStayAt: [1],
});

// ECDC point prevalence survey protocol 5.3 (2016), definition of a healthcare-associated infection.
it.each<[string, number, Story, string]>([
  ["day 2", 2, {}, brought],
  ["day 3", 3, {}, own],
  ["day 1 of a stay of one day", 9, { wards: [[1, 9, 9]] }, brought],
  ["discharged the day before", 9, stays(8, 9), own],
  ["discharged the day before, second day", 10, stays(8, 9), own],
  ["discharged on the day of return", 8, stays(8, 8), own],
  ["discharged on the day of return, the infection before", 7, stays(8, 8), brought],
  ["discharged two days before", 10, stays(8, 10), brought],
  ["a stay that ended only after this one had begun", 10, stays(10, 9), brought],
  ["a catheter placed on day 1, onset on day 2", 2, { catheters: [[1, null]] }, own],
  ["a catheter placed on day 2, onset on day 2", 2, { catheters: [[2, null]] }, own],
  ["a catheter placed on day 2, onset on day 1", 1, { catheters: [[2, null]] }, brought],
  ["a catheter placed before the stay", 2, { catheters: [[0, null]] }, brought],
  [
    "in place on arrival and exchanged on day 2",
    2,
    {
      catheters: [
        [null, 2],
        [2, null],
      ],
    },
    brought,
  ],
  [
    "in place on arrival, removed, and another on day 2",
    2,
    {
      catheters: [
        [null, 1],
        [2, null],
      ],
    },
    own,
  ],
  ["a catheter in place on arrival", 2, { catheters: [[null, null]] }, brought],
])("%s", (_title, day, story, expected) => {
  expect(onset(day, story)).toBe(expected);
});
