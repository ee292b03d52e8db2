import { describe, expect, it } from "vitest";
import { checkStay, overlapFaults } from "../../../src/domain/timeline/check-stay.ts";
import { faultText, refusals } from "./refusals.ts";
import { stayFromLines, timelineOf } from "./written.ts";

describe("a stay that contradicts nothing", () => {
  it.each([
    { title: "ward stays that touch", lines: ["stay 1: 10-50", "ward stay 2: A 10-20", "ward stay 3: B 20-50"] },
    { title: "time off the wards", lines: ["stay 1: 10-50", "ward stay 2: A 15-20", "ward stay 3: B 30-40"] },
    { title: "a ward stay of no length", lines: ["stay 1: 10-", "ward stay 2: A 10-10", "ward stay 3: B 10-"] },
    { title: "another stay that ended as this one began", lines: ["stay 1: 10-", "stay 5: 4-10"] },
    { title: "a stay of no length inside another one", lines: ["stay 1: 10-", "stay 5: 20-20"] },
  ])("passes unchanged with $title", ({ lines }) => {
    const timeline = timelineOf(...lines);
    expect(checkStay(timeline, 1)).toBe(timeline);
  });

  it("passes when everything wrong with it was voided", () => {
    const { stays, ...rest } = timelineOf("stay 1: 10-50", "ward stay 2: A 1-60", "ward stay 3: B 5-70");
    const voided = stays.map((s) => ({ ...s, wardStays: s.wardStays.map((w) => ({ ...w, voidReason: "wrong" })) }));
    expect(refusals(() => checkStay({ ...rest, stays: voided }, 1))).toEqual([]);
    const all = stays.map((s) => ({ ...s, voidReason: "wrong" }));
    expect(refusals(() => checkStay({ ...rest, stays: all }, 1))).toEqual([]);
  });
});

describe("a stay that contradicts itself or another one", () => {
  it.each([
    { title: "an end before its beginning", lines: ["stay 1: 10-9"], refused: ["end-before-start see stay 1"] },
    {
      title: "another stay inside it",
      lines: ["stay 1: 10-50", "stay 5: 20-30"],
      refused: ["stay-overlaps see stay 5"],
    },
    { title: "another open stay", lines: ["stay 1: 10-", "stay 5: 60-"], refused: ["stay-overlaps see stay 5"] },
    {
      title: "two wards at once",
      lines: ["stay 1: 10-50", "ward stay 2: A 10-31", "ward stay 3: B 30-50"],
      refused: ["move-overlaps see ward stay 2"],
    },
    {
      title: "a ward that was never left and a later one",
      lines: ["stay 1: 10-", "ward stay 2: A 10-", "ward stay 3: B 30-40"],
      refused: ["move-overlaps see ward stay 2"],
    },
    {
      title: "a ward stay that ends before it begins",
      lines: ["stay 1: 10-50", "ward stay 2: A 30-20"],
      refused: ["end-before-start"],
    },
    {
      title: "a ward stay that begins too early and one that ends too late",
      lines: ["stay 1: 10-50", "ward stay 2: A 9-20", "ward stay 3: B 20-51"],
      refused: ["outside-stay see stay 1", "outside-stay see stay 1"],
    },
    {
      title: "a catheter put in after the discharge",
      lines: ["stay 1: 10-50", "catheter 4: 50-"],
      refused: ["outside-stay see stay 1"],
    },
    {
      title: "all of that at once",
      lines: ["stay 1: 10-50", "ward stay 2: A 9-30", "ward stay 3: B 29-50", "catheter 4: 30-20", "stay 5: 40-"],
      refused: [
        "stay-overlaps see stay 5",
        "outside-stay see stay 1",
        "move-overlaps see ward stay 2",
        "removal-before-insertion",
      ],
    },
  ])("is refused for $title", ({ lines, refused }) => {
    expect(refusals(() => checkStay(timelineOf(...lines), 1))).toEqual(refused);
  });

  it("that is not in the timeline at all is a bug of the caller", () => {
    expect(() => checkStay(timelineOf("stay 1: 10-"), 2)).toThrow(/stay 2 is not in the timeline/);
  });
});

describe("the faults of two stays", () => {
  it("are none for a voided one", () => {
    const [a, b] = [stayFromLines("stay 1: 10-50"), stayFromLines("stay 5: 20-")];
    expect(overlapFaults(a, b).map(faultText)).toEqual(["stay-overlaps see stay 5"]);
    expect(overlapFaults(a, { ...b, voidReason: "wrong" })).toEqual([]);
  });
});
