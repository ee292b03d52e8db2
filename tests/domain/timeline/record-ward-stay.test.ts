import { describe, expect, it } from "vitest";
import { type RecordedWardStay, recordWardStay, spanned } from "../../../src/domain/timeline/record-ward-stay.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { refusals } from "./refusals.ts";
import { linesOf, stayFromLines, timelineOf, wardIds } from "./written.ts";

function recorded(startAt: number, endAt: number | null): RecordedWardStay {
  const fixed = { stayId: 1, wardStayId: 9, wardId: wardIds.B, bed: null, marks: [] };
  return { ...fixed, absenceAfter: "leave", startAt, endAt };
}

function fromMoves(timeline: PatientTimeline): PatientTimeline {
  return { ...timeline, stays: timeline.stays.map((stay) => ({ ...stay, spanFromMoves: true })) };
}

describe("time on a ward as another system recorded it", () => {
  it("is added and changes nothing around it", () => {
    const before = timelineOf("stay 1: 10-50", "ward stay 2: A 10-20");
    expect(linesOf(recordWardStay(before, recorded(30, 40)))).toEqual([
      "stay 1: 10-50",
      "ward stay 2: A 10-20",
      "ward stay 9: B 30-40 then leave",
    ]);
  });

  it.each([
    { title: "on another ward at that time", from: 15, to: 25, refused: ["move-overlaps see ward stay 2"] },
    { title: "before the admission", from: 5, to: 10, refused: ["outside-stay see stay 1"] },
    { title: "beyond the discharge", from: 30, to: 51, refused: ["outside-stay see stay 1"] },
    { title: "without an end after the discharge", from: 30, to: null, refused: ["outside-stay see stay 1"] },
    { title: "ending before it begins", from: 30, to: 29, refused: ["end-before-start"] },
  ])("is refused $title", ({ from, to, refused }) => {
    const timeline = timelineOf("stay 1: 10-50", "ward stay 2: A 10-20");
    expect(refusals(() => recordWardStay(timeline, recorded(from, to)))).toEqual(refused);
  });

  it("stretches a stay whose span follows its moves", () => {
    const before = fromMoves(timelineOf("stay 1: 10-20", "ward stay 2: A 10-20"));
    expect(linesOf(recordWardStay(before, recorded(5, 9)))[0]).toBe("stay 1: 5-20 v2");
    expect(linesOf(recordWardStay(before, recorded(30, 40)))[0]).toBe("stay 1: 10-40 v2");
    expect(linesOf(recordWardStay(before, recorded(30, null)))[0]).toBe("stay 1: 10- v2");
  });
});

describe("a stay that follows its moves", () => {
  it("and begins earlier than was thought takes its catheters for put in here, unless nobody knows when", () => {
    const lines = ["stay 1: 10-20", "ward stay 2: A 10-20", "catheter 4: arrived 7-", "catheter 5: arrived ?-"];
    const before = fromMoves(timelineOf(...lines));
    expect(linesOf(recordWardStay(before, recorded(5, 9)))).toEqual([
      "stay 1: 5-20 v2",
      "ward stay 2: A 10-20",
      "ward stay 9: B 5-9 then leave",
      "catheter 4: 7- v2",
      "catheter 5: arrived ?-",
    ]);
  });

  it("is the same object when nothing about its span changes", () => {
    const stay = { ...stayFromLines("stay 1: 10-20", "ward stay 2: A 10-20"), spanFromMoves: true };
    expect(spanned(stay)).toBe(stay);
  });

  it("keeps a span that was given to it", () => {
    const stay = stayFromLines("stay 1: 8-25", "ward stay 2: A 10-20");
    expect(spanned(stay)).toBe(stay);
  });
});
