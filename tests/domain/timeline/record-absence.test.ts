import { describe, expect, it } from "vitest";
import { recordAbsence } from "../../../src/domain/timeline/record-absence.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

const away = (leftAt: number, backAt: number | null, kind: "procedure" | "leave" | null = "procedure") => ({
  stayId: 1,
  leftAt,
  kind,
  back: backAt === null ? null : { at: backAt, wardStayId: 9 },
});

describe("an absence", () => {
  it.each([
    {
      title: "with a return splits the time on the ward",
      before: ["stay 1: 10-", "ward stay 2: A 10-"],
      absence: away(20, 25),
      after: ["stay 1: 10-", "ward stay 2: A 10-20 then procedure v2", "ward stay 9: A 25-"],
    },
    {
      title: "without a return lasts until something else is recorded",
      before: ["stay 1: 10-", "ward stay 2: A 10-"],
      absence: away(20, null, "leave"),
      after: ["stay 1: 10-", "ward stay 2: A 10-20 then leave v2"],
    },
    {
      title: "of a kind that nobody said keeps none",
      before: ["stay 1: 10-", "ward stay 2: A 10-"],
      absence: away(20, 25, null),
      after: ["stay 1: 10-", "ward stay 2: A 10-20 v2", "ward stay 9: A 25-"],
    },
    {
      title: "before another one hands that one on to the time after the return",
      before: ["stay 1: 10-50", "ward stay 2: A 10-30 then leave", "ward stay 3: B 40-50"],
      absence: away(15, 20),
      after: [
        "stay 1: 10-50",
        "ward stay 2: A 10-15 then procedure v2",
        "ward stay 3: B 40-50",
        "ward stay 9: A 20-30 then leave",
      ],
    },
    {
      title: "may last until the very next move, and take no time at all",
      before: ["stay 1: 10-", "ward stay 2: A 10-30", "ward stay 3: B 30-"],
      absence: away(20, 30),
      after: ["stay 1: 10-", "ward stay 2: A 10-20 then procedure v2", "ward stay 3: B 30-", "ward stay 9: A 30-30"],
    },
  ])("$title", ({ before, absence, after }) => {
    expect(linesOf(recordAbsence(timelineOf(...before), absence))).toEqual(after);
  });

  it("keeps the bed for the return", () => {
    const timeline = timelineOf("stay 1: 10-", "ward stay 2: A 10-");
    const inBed = timeline.stays.map((s) => ({ ...s, wardStays: s.wardStays.map((w) => ({ ...w, bed: "7" })) }));
    const after = recordAbsence({ ...timeline, stays: inBed }, away(20, 25));
    expect(after.stays[0]?.wardStays.map((w) => w.bed)).toEqual(["7", "7"]);
  });

  it.each([
    { title: "while the patient is away", absence: away(35, null), refused: ["not-on-a-ward see ward stay 2"] },
    { title: "at the instant at which they left", absence: away(30, null), refused: ["not-on-a-ward see ward stay 2"] },
    { title: "that ends before it begins", absence: away(20, 19), refused: ["end-before-start"] },
    { title: "that outlasts the time on the ward", absence: away(20, 31), refused: ["move-overlaps see ward stay 2"] },
    { title: "before the stay", absence: away(5, null), refused: ["outside-stay see stay 1"] },
    { title: "after the stay", absence: away(60, null), refused: ["outside-stay see stay 1"] },
  ])("is refused $title", ({ absence, refused }) => {
    const timeline = timelineOf("stay 1: 10-60", "ward stay 2: A 10-30", "ward stay 3: A 40-60");
    expect(refusals(() => recordAbsence(timeline, absence))).toEqual(refused);
  });
});
