import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { type StorySign, storyDay } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const urine = [{ day: 10, grew: [["Escherichia coli", ">100000"]] }] as const;
const early: StorySign = { day: 9, sign: "38.4" };

/** Outcome, criterion and day of an infection of the old, in place from day 8 on: eligible from day 10. */
function summary(earlyFeverOver65: "not-usable" | "dates-the-event", ...signs: StorySign[]) {
  const timeline = timelineOf({ ageYears: 70, catheters: [[8, null]], urine, signs });
  const [found] = determine(timeline, { ...us2024, options: { ...us2024.options, earlyFeverOver65 } });
  return [found?.outcome, found?.event?.criterion, found?.event?.deviceAssociated];
}

it.each<[string, StorySign]>([
  ["fever while the catheter is eligible", { day: 10, sign: "38.6" }],
  ["another sign", { day: 10, sign: "suprapubic-tenderness" }],
])("early fever over 65 dates an infection without a catheter in the other reading, once there is %s", (_, sign) => {
  expect(summary("dates-the-event", early, sign)).toEqual(["event", "suti-1b", false]);
  expect(summary("not-usable", early, sign)).toEqual(["event", "suti-1a", true]);
});

it("only early fever dates it so, no sign that is none at that age", () => {
  const timeline = timelineOf({
    ...{ ageYears: 70, catheters: [[8, null]], urine },
    signs: [{ day: 7, sign: "vomiting" }, early, { day: 10, sign: "suprapubic-tenderness" }],
  });
  const options = { ...us2024.options, earlyFeverOver65: "dates-the-event" } as const;
  const [found] = determine(timeline, { ...us2024, options });
  expect(found?.event?.dateOfEvent).toBe(storyDay(9));
});

it("early fever alone is no infection in either reading", () => {
  for (const reading of ["dates-the-event", "not-usable"] as const) {
    expect(summary(reading, early)).toEqual(["not-met", undefined, undefined]);
  }
});

it("without early fever both readings say the same", () => {
  for (const reading of ["dates-the-event", "not-usable"] as const) {
    expect(summary(reading, { day: 10, sign: "38.6" })).toEqual(["event", "suti-1a", true]);
    expect(summary(reading, { day: 7, sign: "dysuria" })).toEqual(["event", "suti-1b", false]);
  }
});
