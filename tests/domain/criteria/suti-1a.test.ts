import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { StorySign } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const edition = { ...us2024, options: { ...us2024.options, earlyFeverOver65: "dates-the-event" } } as const;

function summary(...signs: StorySign[]) {
  const urine = [{ day: 10, grew: [["Escherichia coli", ">100000"]] }] as const;
  const [found] = determine(timelineOf({ ageYears: 70, catheters: [[2, null]], urine, signs }), edition);
  return [found?.outcome, found?.event?.criterion];
}

it("where early fever dates an event, it is met by its own signs and by no other", () => {
  expect(summary({ day: 10, sign: "38.4" })).toEqual(["event", "suti-1a"]);
  expect(summary({ day: 10, sign: "suprapubic-tenderness" })).toEqual(["event", "suti-1a"]);
  expect(summary({ day: 10, sign: "vomiting" })).toEqual(["not-met", undefined]);
});
