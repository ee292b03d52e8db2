import { expect, it } from "vitest";
import { episodesOf, hasQuickReturn } from "../../../src/domain/criteria/episodes.ts";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { type Story, storyDay } from "../../../src/domain/criteria/story.ts";
import type { SurveillanceTimeline, WardTime } from "../../../src/domain/criteria/surveillance-timeline.ts";

type Reading = "one-stay" | "own-stay";

function told(timeline: SurveillanceTimeline, readmission: Reading, unknownWards: "inpatient" | "outpatient") {
  return episodesOf(timeline, { readmission }, unknownWards).map((one) => ({
    days: [one.firstDay - storyDay(0), one.lastDay - storyDay(0)],
    isOver: one.isOver,
    inpatient: [...one.inpatientDays].map((day) => day - storyDay(0)),
    wards: one.wards.map(({ wardId, first, last }) => [wardId, first - storyDay(0), last - storyDay(0)]),
    stayIds: one.stayIds,
  }));
}
const read = (
  story: Story,
  readmission: Reading = "own-stay",
  unknownWards: "inpatient" | "outpatient" = "inpatient",
) => told(timelineOf(story), readmission, unknownWards);

it("an admission runs from the first to the last day on an inpatient ward", () => {
  const story: Story = {
    wards: [
      [7, 1, 2, "outpatient"],
      [1, 2, 4],
      [2, 6, 7],
      [7, 7, 9, "outpatient"],
    ],
  };
  expect(read(story)).toEqual([
    {
      days: [2, 7],
      isOver: true,
      inpatient: [2, 3, 4, 6, 7],
      wards: [
        [1, 2, 4],
        [2, 6, 7],
      ],
      stayIds: [1],
    },
  ]);
  expect(read({ wards: [[7, 1, 2, "outpatient"]] })).toEqual([]);
});

it("lasts until the day of the question, of which it knows nothing later", () => {
  const days = (story: Story) => read(story).map((one) => [...one.days, one.isOver]);
  expect(days({ wards: [[1, 1, null]], knownThrough: 5 })).toEqual([[1, 5, false]]);
  expect(days({ wards: [[1, 1, 8]], knownThrough: 5 })).toEqual([[1, 5, false]]);
  expect(days({ wards: [[1, 1, 5]], knownThrough: 5 })).toEqual([[1, 5, true]]);
  expect(days({ wards: [[1, 6, 8]], knownThrough: 5 })).toEqual([]);
  expect(days({ wards: [[1, 5, 8]], knownThrough: 5 })).toEqual([[5, 5, false]]);
  expect(days({ wards: [[1, 5, 3]], knownThrough: 9 })).toEqual([[5, 5, true]]);
});

it("takes a ward that nobody described for what is asked", () => {
  const story: Story = {
    wards: [
      [7, 1, 3, null],
      [1, 3, 5],
    ],
  };
  expect(read(story).map(({ days }) => days)).toEqual([[1, 5]]);
  expect(read(story, "own-stay", "outpatient").map(({ days }) => days)).toEqual([[3, 5]]);
});

it("joins stays without a full day outside where the edition reads them as one", () => {
  const back = (from: number): Story => ({
    wards: [
      [1, 1, 4],
      [2, from, from + 1],
    ],
    newStayAt: [1],
  });
  expect(read(back(5), "one-stay")).toEqual([
    {
      days: [1, 6],
      isOver: true,
      inpatient: [1, 2, 3, 4, 5, 6],
      wards: [
        [1, 1, 4],
        [2, 5, 6],
      ],
      stayIds: [1, 2],
    },
  ]);
  expect(read(back(5)).map(({ stayIds }) => stayIds)).toEqual([[1], [2]]);
  expect(read(back(6), "one-stay").map(({ stayIds }) => stayIds)).toEqual([[1], [2]]);
  const undescribed: Story = {
    wards: [
      [1, 1, 4, null],
      [2, 5, 6, null],
    ],
    newStayAt: [1],
  };
  expect(hasQuickReturn(timelineOf(undescribed))).toBe(true);
  expect([5, 6].map((from) => hasQuickReturn(timelineOf(back(from))))).toEqual([true, false]);
});

it("a stay inside another ends nothing", () => {
  const story: Story = {
    wards: [
      [1, 1, 9],
      [2, 3, 4],
    ],
    newStayAt: [1],
    knownThrough: 8,
  };
  expect(read(story, "one-stay").map(({ days, isOver }) => [...days, isOver])).toEqual([[1, 8, false]]);
});

it("puts admissions in the order of days, the shorter before the longer, then by number", () => {
  const timeline = timelineOf({
    wards: [
      [1, 5, 9],
      [2, 5, 7],
      [3, 1, 2],
      [4, 5, 7],
    ],
    newStayAt: [1, 2, 3],
  });
  const ids = (stays: SurveillanceTimeline["stays"]) =>
    told({ ...timeline, stays }, "own-stay", "inpatient").map(({ stayIds }) => stayIds[0]);
  expect([ids(timeline.stays), ids(timeline.stays.toReversed())]).toEqual([
    [3, 2, 4, 1],
    [3, 2, 4, 1],
  ]);
});

it("puts the wards of a stay in the order of days, instants, ends and numbers", () => {
  const time = (wardId: number, day: number, at: number | null, lastDay: number | null): WardTime => ({
    wardId,
    setting: "inpatient",
    start: { day: storyDay(day), at },
    end: lastDay === null ? null : { day: storyDay(lastDay), at: null },
  });
  const ordered = [
    time(9, 1, 500, 5),
    time(8, 2, 10, 9),
    time(7, 2, 20, 3),
    time(5, 2, 30, 4),
    time(6, 2, 30, 4),
    time(4, 2, 30, 8),
    time(3, 2, 30, null),
    time(2, 3, null, 4),
    time(1, 3, 5, 3),
  ];
  const wardsOf = (wardTimes: readonly WardTime[]) => {
    const timeline = {
      ...timelineOf({}),
      stays: [{ id: 1, admissionDay: storyDay(1), wardTimes, dischargeDay: null }],
    };
    return told(timeline, "own-stay", "inpatient")[0]?.wards.map(([wardId]) => wardId);
  };
  const expected = ordered.map(({ wardId }) => wardId);
  expect([wardsOf(ordered), wardsOf(ordered.toReversed())]).toEqual([expected, expected]);
});
