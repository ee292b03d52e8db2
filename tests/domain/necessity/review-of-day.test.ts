import { describe, expect, it } from "vitest";
import type { ReviewState } from "../../../src/domain/necessity/review-of-day.ts";
import { march } from "../counting/march-records.ts";
import { reviewOf } from "./asked-review.ts";

describe("the review of a day", () => {
  it.each<[title: string, notes: string, now: string, state: ReviewState, day?: string]>([
    ["before its hour", "", "07/11:59", "due"],
    ["in the minute of its hour", "", "07/12:00", "due"],
    ["after its hour", "", "07/12:01", "overdue"],
    ["until the day is over", "", "07/23:59", "overdue"],
    ["once the day is over", "", "08/00:00", "missed"],
    ["kept in time", "review 3 07/09:00 keep for other", "07/10:00", "done"],
    ["kept in the minute of its hour", "review 3 07/12:00 keep for other", "08/10:00", "done"],
    ["removed in time", "review 3 07/00:00 remove", "08/10:00", "done"],
    ["answered after its hour", "review 3 07/12:01 keep for other", "08/10:00", "late"],
    ["answered in the last minute", "review 3 07/23:59 remove", "08/10:00", "late"],
    [
      "answered in time and again later",
      "review 3 07/18:00 remove; review 3 07/09:00 keep for other",
      "07/20:00",
      "done",
    ],
    ["answered later than it is asked for", "review 3 07/09:00 keep for other", "07/08:59", "due"],
    [
      "answered on another day only",
      "review 3 06/09:00 keep for other; review 3 08/00:00 keep for other",
      "08/10:00",
      "missed",
    ],
    ["asked before its hour", "review 3 07/09:00 ask", "07/10:00", "asked"],
    ["asked, and its hour passed", "review 3 07/09:00 ask", "07/12:01", "overdue"],
    ["asked, and the day over", "review 3 07/09:00 ask", "08/10:00", "missed"],
    ["asked and answered in time", "review 3 07/09:00 ask; review 3 07/11:00 keep for other", "07/13:00", "done"],
    ["asked in time and answered late", "review 3 07/09:00 ask; review 3 07/13:00 remove", "07/14:00", "late"],
    [
      "asked again after it was answered",
      "review 3 07/09:00 keep for other; review 3 07/15:00 ask",
      "07/16:00",
      "done",
    ],
    ["answered by a voided note", "review 3 07/09:00 keep for other voided", "07/13:00", "overdue"],
    ["answered by other notes", "confirmation 3 07/09:00; care-check 3 07/09:00 secured=kept", "07/13:00", "overdue"],
    ["of another catheter", "review 4 07/09:00 keep for other", "07/13:00", "overdue"],
    ["on a day too early", "", "05/13:00", "not-due", "05"],
    ["made on a day too early", "review 3 05/13:00 keep for other", "05/14:00", "done", "05"],
    ["asked on a day too early", "review 3 05/13:00 ask", "05/14:00", "asked", "05"],
    ["on a day that has not come", "", "07/10:00", "not-due", "08"],
  ])("%s", (_, notes, now, state, day = "07") => {
    expect(reviewOf({ notes: notes === "" ? [] : notes.split("; "), now, day }).state).toBe(state);
  });

  it("names the review that answered it, and whether it was written down on a later day", () => {
    const notes = [
      "review 3 07/08:00 ask",
      "review 3 07/09:00 remove written 07/23:59",
      "review 3 07/10:00 keep for other",
    ];
    expect(reviewOf({ notes, now: "09/10:00" })).toMatchObject({
      eligibilityDay: 3,
      answer: {
        noteId: 2,
        at: march("07", "09:00"),
        outcome: "remove",
        writtenAt: march("07", "23:59"),
        writtenLate: false,
      },
      askedAt: null,
    });
    const late = ["review 3 07/09:00 keep for other written 08/00:00"];
    expect(reviewOf({ notes: late, now: "09/10:00" })).toMatchObject({ state: "done", answer: { writtenLate: true } });
  });

  it("says when the prescriber was last asked while nothing answers", () => {
    const notes = ["review 3 07/08:00 ask", "review 3 07/09:00 ask"];
    expect(reviewOf({ notes, now: "07/13:00" }).askedAt).toBe(march("07", "09:00"));
    expect(reviewOf({ notes: ["review 3 06/08:00 ask"], now: "07/13:00" }).askedAt).toBeNull();
  });
});
