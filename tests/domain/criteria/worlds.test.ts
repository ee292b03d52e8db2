import { expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { storyDay } from "../../../src/domain/criteria/story.ts";
import type { CatheterTime, Moment } from "../../../src/domain/criteria/surveillance-timeline.ts";
import { isContradictory, worldsOf } from "../../../src/domain/criteria/world.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

/** A moment by the day of a story and, where it is known, the hour. */
const when = (day: number, hour: number | null = null): Moment => ({
  day: storyDay(day),
  at: hour === null ? null : (storyDay(day) * 24 + hour) * 3_600_000,
});
const catheter = (
  id: number,
  start: Moment | null,
  end: Moment | null,
  latest: number | null = null,
): CatheterTime => ({
  id,
  kind: "indwelling-urethral",
  start,
  end,
  latestEndDay: latest === null ? null : storyDay(latest),
});
const hourOf = (moment: Moment | null) =>
  moment && [moment.day - storyDay(0), moment.at && (moment.at / 3_600_000) % 24];

/** First day, last day, number, beginning, end and last possible day of each catheter, in the world of the fewest. */
function spans(...catheters: CatheterTime[]) {
  const [world] = worldsOf({ ...timelineOf({}), catheters }, us2024);
  return world?.catheters.map(({ first, last, time }) => [
    first - storyDay(0),
    last - storyDay(0),
    time.id,
    hourOf(time.start),
    hourOf(time.end),
    time.latestEndDay === null ? null : time.latestEndDay - storyDay(0),
  ]);
}

it.each<[string, Story, number]>([
  ["nothing unknown", { signs: [{ day: 5, sign: "dysuria", hour: 3 }], catheters: [[2, 4]] }, 1],
  ["a sign that was absent", { signs: [{ day: 5, sign: "37.0", finding: "absent" }] }, 1],
  ["a sign without an hour", { signs: [{ day: 5, sign: "dysuria" }] }, 2],
  ["a temperature", { signs: [{ day: 5, sign: "38.4", hour: 3 }] }, 2],
  ["a removal that was found out", { catheters: [[2, 4]], latestRemoval: 6 }, 2],
  ["such a removal of a suprapubic catheter", { catheters: [[2, 4, "suprapubic"]], latestRemoval: 6 }, 1],
  ["a removal before the insertion", { catheters: [[4, 2]] }, 2],
  ["a ward of which nobody said what it is", { wards: [[1, 1, 4, null]] }, 2],
  [
    "one such ward after another",
    {
      wards: [
        [1, 1, 4, "inpatient"],
        [2, 4, null, null],
      ],
    },
    2,
  ],
  ["an unknown age", { ageYears: null }, 3],
  ["age, removal and hour", { ageYears: null, catheters: [[4, 2]], signs: [{ day: 5, sign: "dysuria" }] }, 12],
])("with %s there are so many worlds", (_title, story, count) => {
  expect(worldsOf(timelineOf({ lookedFor: false, ...story }), us2024)).toHaveLength(count);
});

it.each([
  [when(5), when(4), true],
  [when(5, 10), when(5, 9), true],
  [when(5, 10), when(5, 10), false],
  [when(5), when(5), false],
  [when(5, 10), when(5), false],
  [when(5), when(5, 9), false],
  [when(5, 10), when(6, 9), false],
  [null, when(4), false],
  [when(5), null, false],
])("in at %j, out at %j: contradictory: %s", (start, end, contradictory) => {
  expect(isContradictory(catheter(1, start, end))).toBe(contradictory);
});

it("a catheter with a contradiction was in place on no day, or on all days between the two", () => {
  const catheters = [catheter(7, when(9, 8), when(5, 8))];
  const worlds = worldsOf({ ...timelineOf({}), catheters }, us2024);
  const told = worlds.map((world) => [world.choice.catheters, world.catheters]);
  const time = { ...catheter(7, null, null) };
  expect(told).toEqual([
    ["least", []],
    ["most", [{ first: storyDay(5), last: storyDay(9), isOpen: false, time }]],
  ]);
});

it("a catheter of one day is in place on that day", () => {
  expect(spans(catheter(1, when(5, 8), when(5, 9)))).toEqual([[5, 5, 1, [5, 8], [5, 9], null]]);
});

it("catheters that meet to the hour are one, whatever the order in which they are told", () => {
  const [one, other] = [catheter(1, when(2, 8), when(5, 9)), catheter(2, when(5, 9), when(8, 10))];
  const united = [[2, 8, 1, [2, 8], [8, 10], null]];
  expect([spans(one, other), spans(other, one)]).toEqual([united, united]);
  // A third that comes later than both is another one.
  const third = catheter(3, when(9, 8), when(10, 8));
  expect(spans(one, third, other)).toEqual([...united, [9, 10, 3, [9, 8], [10, 8], null]]);
});

it("catheters with an hour between them are two, also on one day", () => {
  const [one, other] = [catheter(1, when(5, 9), when(5, 10)), catheter(2, when(5, 11), when(5, 12))];
  const apart = [
    [5, 5, 1, [5, 9], [5, 10], null],
    [5, 5, 2, [5, 11], [5, 12], null],
  ];
  expect([spans(one, other), spans(other, one)]).toEqual([apart, apart]);
});

it("two that begin together are told by the lower number", () => {
  const [one, other] = [catheter(1, when(5, 9), when(6, 9)), catheter(2, when(5, 9), when(7, 9))];
  const united = [[5, 7, 1, [5, 9], [7, 9], null]];
  expect([spans(one, other), spans(other, one)]).toEqual([united, united]);
});

it.each<[string, CatheterTime, unknown[]]>([
  ["ends before it", catheter(2, when(3, 8), when(4, 8)), [2, 6, 1, [2, 8], [6, 9], null]],
  ["ends with it", catheter(2, when(3, 8), when(6, 9)), [2, 6, 1, [2, 8], [6, 9], null]],
  ["ends after it", catheter(2, when(3, 8), when(9, 8)), [2, 9, 1, [2, 8], [9, 8], null]],
  ["is still in place", catheter(2, when(3, 8), null), [2, 60, 1, [2, 8], null, null]],
  ["ends at an unknown hour", catheter(2, when(3, 8), when(8)), [2, 8, 1, [2, 8], [8, null], null]],
  ["may have ended later", catheter(2, when(3, 8), when(6, 8), 7), [2, 6, 1, [2, 8], [6, 9], 7]],
  ["may have ended on the last day of both", catheter(2, when(3, 8), when(4, 8), 6), [2, 6, 1, [2, 8], [6, 9], 6]],
  ["may have ended later, but before it", catheter(2, when(3, 8), when(4, 8), 5), [2, 6, 1, [2, 8], [6, 9], null]],
])("a catheter that begins while another is in place and %s", (_title, second, united) => {
  expect(spans(catheter(1, when(2, 8), when(6, 9)), second)).toEqual([united]);
});

it.each<[string, CatheterTime]>([
  ["ended", catheter(2, when(3, 8), when(4, 8))],
  ["ended at an unknown hour", catheter(2, when(3, 8), when(4))],
  ["may have ended later", catheter(2, when(3, 8), when(4, 8), 6)],
  ["is still in place too", catheter(2, when(3, 8), null)],
])("a catheter that was put in while another is still in place goes on as the same: it %s", (_title, second) => {
  const open = catheter(1, when(2, 8), null);
  expect(spans(open, second)).toEqual([[2, 60, 1, [2, 8], null, null]]);
  expect(spans(open, second, catheter(3, when(9, 8), when(9, 9)))).toEqual([[2, 60, 1, [2, 8], null, null]]);
});

it("what is in doubt of the first stays in doubt", () => {
  const first = catheter(1, when(2, 8), when(6, 9), 9);
  expect(spans(first, catheter(2, when(3, 8), when(7, 8)))).toEqual([[2, 7, 1, [2, 8], [7, 8], 9]]);
  expect(spans(first, catheter(2, when(3, 8), when(7, 8), 8))).toEqual([[2, 7, 1, [2, 8], [7, 8], 9]]);
});

it("one of which nobody knows the beginning is no continuation of another", () => {
  const [before, onArrival] = [catheter(1, when(0, 8), when(6, 9)), catheter(2, null, when(3, 8))];
  expect(spans(before, onArrival)).toEqual([
    [0, 6, 1, [0, 8], [6, 9], null],
    [1, 3, 2, null, [3, 8], null],
  ]);
});

it("days before the first inpatient day count where an edition counts from insertion, and no day after it", () => {
  const story: Story = {
    wards: [
      [1, 5, 5],
      [1, 8, null],
    ],
    catheters: [[2, null]],
    knownThrough: 9,
  };
  const eligible = (catheterDaysFrom: "insertion" | "first-inpatient-day") => {
    const options = { ...us2024.options, catheterDaysFrom };
    const [world] = worldsOf(timelineOf(story), { ...us2024, options });
    const [episode] = world?.episodes ?? [];
    return episode && [...(world?.eligibility(episode) ?? [])].map(([day, number]) => [day - storyDay(0), number]);
  };
  expect(eligible("insertion")).toEqual([
    [2, 1],
    [3, 2],
    [4, 3],
    [5, 4],
    [8, 1],
    [9, 2],
  ]);
  expect(eligible("first-inpatient-day")).toEqual([
    [5, 1],
    [8, 1],
    [9, 2],
  ]);
});
