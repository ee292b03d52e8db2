import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { storyDay } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const options = { ...us2024.options, elementInsideTimeframe: "later-elements" } as const;

/** What a second culture comes to after an event of day 5, whose timeframe ends on day 18, and by what it is dated. */
function second(day: number, ...signDays: number[]) {
  const timeline = timelineOf({
    urine: [
      { day: 5, grew },
      { day, grew },
    ],
    signs: [5, ...signDays].map((each) => ({ day: each, sign: "dysuria" })),
  });
  const [, found] = determine(timeline, { ...us2024, options });
  return [found?.outcome, found?.event ? found.event.dateOfEvent - storyDay(0) : null];
}

it.each<[string, number, number[], [string, number | null]]>([
  ["elements behind the timeframe suffice", 20, [18, 20], ["event", 20]],
  ["also on the first day behind it", 19, [18, 19], ["event", 19]],
  ["the only element lies in it", 20, [18], ["repeat", null]],
  ["the culture itself lies in it", 18, [17, 19], ["repeat", null]],
  ["nothing lies in it", 22, [22], ["event", 22]],
])("where later elements can date an event of their own: %s", (_title, day, signDays, expected) => {
  expect(second(day, ...signDays)).toEqual(expected);
});

it("keeps the order of dates after an event was dated anew", () => {
  const timeline = timelineOf({
    urine: [
      { day: 5, grew },
      { day: 20, grew },
      { day: 22, grew },
    ],
    signs: [5, 18, 20].map((day) => ({ day, sign: "dysuria" })),
  });
  const told = determine(timeline, { ...us2024, options }).map(({ outcome, repeatOf }) => [outcome, repeatOf?.id]);
  expect(told).toEqual([
    ["event", undefined],
    ["event", undefined],
    ["repeat", 2],
  ]);
});

it("stays a repeat where the later elements would not be reported", () => {
  const timeline = timelineOf({
    wards: [[1, 1, 18]],
    urine: [
      { day: 5, grew },
      { day: 20, grew },
    ],
    signs: [5, 18, 20].map((day) => ({ day, sign: "dysuria" })),
  });
  expect(determine(timeline, { ...us2024, options }).map(({ outcome }) => outcome)).toEqual(["event", "repeat"]);
});

it("asks for later elements once, and only of cultures from behind the timeframe", () => {
  const timeline = timelineOf({
    urine: [
      { day: 5, grew },
      { day: 18, grew },
    ],
    signs: [5, 17, 19].map((day) => ({ day, sign: "dysuria" })),
  });
  const [, found] = determine(timeline, { ...us2024, options });
  expect(found?.derivation.filter(({ sentence }) => sentence.startsWith("The window"))).toHaveLength(1);
});

it("tells both: what dated it inside the timeframe, and what does behind it", () => {
  const timeline = timelineOf({
    urine: [
      { day: 5, grew },
      { day: 20, grew },
    ],
    signs: [5, 18, 20].map((day) => ({ day, sign: "dysuria" })),
  });
  const [, found] = determine(timeline, { ...us2024, options });
  const told = (rule: string) => found?.derivation.filter((step) => step.rule === rule).map((step) => step.sentence);
  expect(told("date-of-event")).toEqual([
    "The date of event is 18 March 2024, the day of the first element that was used.",
    "The date of event is 20 March 2024, the day of the first element that was used.",
  ]);
  expect(told("infection-window")).toContain(
    "The window runs from 17 March to 23 March 2024; elements count from 19 March 2024 on.",
  );
  expect(told("repeat-timeframe")).toEqual(["It is a new event. Its timeframe runs from 20 March to 2 April 2024."]);
});

it("an infection after a stay of its own is none of the timeframe before, unless the edition reads across stays", () => {
  const timeline = timelineOf({
    wards: [
      [1, 1, 8],
      [1, 12, null],
    ],
    newStayAt: [1],
    urine: [
      { day: 5, grew },
      { day: 15, grew },
    ],
    signs: [5, 15].map((day) => ({ day, sign: "dysuria" })),
  });
  const across = (timeframeAcrossStays: boolean) =>
    determine(timeline, { ...us2024, options: { ...us2024.options, timeframeAcrossStays } })[1]?.outcome;
  expect([across(false), across(true)]).toEqual(["event", "repeat"]);
});
