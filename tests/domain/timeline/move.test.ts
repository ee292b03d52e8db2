import { describe, expect, it } from "vitest";
import { lastStartedBy, move } from "../../../src/domain/timeline/move.ts";
import { refusals } from "./refusals.ts";
import { linesOf, stayFromLines, timelineOf, wardIds } from "./written.ts";

const toB = (movedAt: number) => ({ stayId: 1, wardStayId: 9, movedAt, wardId: wardIds.B, bed: null });

describe("a move", () => {
  it.each([
    {
      title: "is the first ward of a stay without one",
      before: ["stay 1: 10-50"],
      at: 10,
      after: ["stay 1: 10-50", "ward stay 9: B 10-50"],
    },
    {
      title: "before the first ward lasts until it begins",
      before: ["stay 1: 10-", "ward stay 2: A 20-"],
      at: 15,
      after: ["stay 1: 10-", "ward stay 2: A 20-", "ward stay 9: B 15-20"],
    },
    {
      title: "now ends the time on the ward before it",
      before: ["stay 1: 10-", "ward stay 2: A 10-"],
      at: 20,
      after: ["stay 1: 10-", "ward stay 2: A 10-20 v2", "ward stay 9: B 20-"],
    },
    {
      title: "written down late lasts until the next move",
      before: ["stay 1: 10-", "ward stay 2: A 10-30", "ward stay 3: C 30-"],
      at: 20,
      after: ["stay 1: 10-", "ward stay 2: A 10-20 v2", "ward stay 3: C 30-", "ward stay 9: B 20-30"],
    },
    {
      title: "takes over the absence that followed the time it cuts short",
      before: ["stay 1: 10-", "ward stay 2: A 10-30 then procedure", "ward stay 3: A 40-"],
      at: 20,
      after: ["stay 1: 10-", "ward stay 2: A 10-20 v2", "ward stay 3: A 40-", "ward stay 9: B 20-30 then procedure"],
    },
    {
      title: "during an absence is the return, and lasts until the next move",
      before: ["stay 1: 10-", "ward stay 2: A 10-20 then leave", "ward stay 3: A 40-"],
      at: 30,
      after: ["stay 1: 10-", "ward stay 2: A 10-20 then leave", "ward stay 3: A 40-", "ward stay 9: B 30-40"],
    },
    {
      title: "during an absence before the discharge lasts until the discharge",
      before: ["stay 1: 10-50", "ward stay 2: A 10-20"],
      at: 30,
      after: ["stay 1: 10-50", "ward stay 2: A 10-20", "ward stay 9: B 30-50"],
    },
    {
      title: "at the very beginning leaves a time of no length on the first ward",
      before: ["stay 1: 10-", "ward stay 2: A 10-"],
      at: 10,
      after: ["stay 1: 10-", "ward stay 2: A 10-10 v2", "ward stay 9: B 10-"],
    },
  ])("$title", ({ before, at, after }) => {
    expect(linesOf(move(timelineOf(...before), toB(at)))).toEqual(after);
  });

  it.each([
    { title: "before the admission", at: 9, refused: ["outside-stay see stay 1"] },
    { title: "at the discharge", at: 50, refused: ["outside-stay see stay 1"] },
    { title: "after the discharge", at: 51, refused: ["outside-stay see stay 1"] },
  ])("is refused $title", ({ at, refused }) => {
    expect(refusals(() => move(timelineOf("stay 1: 10-50", "ward stay 2: A 10-50"), toB(at)))).toEqual(refused);
  });

  it.each([9, 50])("is refused at %i in a stay from 10 to 50 without a ward", (at) => {
    expect(refusals(() => move(timelineOf("stay 1: 10-50"), toB(at)))).toEqual(["outside-stay see stay 1"]);
  });

  it("of a stay that does not exist is refused", () => {
    expect(refusals(() => move(timelineOf(), toB(20)))).toEqual(["not-found"]);
  });
});

describe("the last ward stay that had begun", () => {
  it("is found also when it began at that instant or has ended, and looks past voided ones", () => {
    const stay = stayFromLines("stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 30-");
    expect([20, 29, 30].map((at) => lastStartedBy(stay, at).id)).toEqual([2, 2, 3]);
    const voided = { ...stay, wardStays: stay.wardStays.map((w) => (w.id === 3 ? { ...w, voidReason: "no" } : w)) };
    expect(lastStartedBy(voided, 30).id).toBe(2);
  });
});
