import { describe, expect, it } from "vitest";
import {
  endOf,
  markedAnew,
  revise,
  stands,
  wardStaysInOrder,
  withEntry,
  withStay,
} from "../../../src/domain/timeline/timeline.ts";
import { linesOf, stayFromLines, timelineOf } from "./written.ts";

describe("a revised entry", () => {
  it("has the changes and the next version, and leaves the old one as it was", () => {
    const stay = stayFromLines("stay 1: 10-");
    expect(revise(stay, { dischargedAt: 20 })).toEqual({ ...stay, dischargedAt: 20, version: 2 });
    expect(stay.dischargedAt).toBeNull();
  });

  it("stands until a reason was given to void it", () => {
    const stay = stayFromLines("stay 1: 10-");
    expect(stands(stay)).toBe(true);
    // An empty reason is a reason: an entry is void because somebody voided it.
    expect(stands(revise(stay, { voidReason: "" }))).toBe(false);
  });
});

describe("the marks of an entry", () => {
  const marks = ["repeated-hour:startAt", "repeated-hour:endAt"] as const;

  it("stay while its times stay", () => {
    expect(markedAnew({ marks }, { bed: "7" })).toBe(marks);
  });

  it("go with the times that are given anew, also with one that is taken back", () => {
    expect(markedAnew({ marks }, { endAt: null })).toEqual(["repeated-hour:startAt"]);
    expect(markedAnew({ marks }, { startAt: 5, endAt: 6 })).toEqual([]);
  });

  it("come with them", () => {
    expect(markedAnew({ marks: [] }, { endAt: 6 }, ["repeated-hour:endAt"])).toEqual(["repeated-hour:endAt"]);
    expect(markedAnew({ marks }, { endAt: 6 }, ["repeated-hour:endAt"])).toEqual(marks);
  });
});

describe("ward stays in order", () => {
  it("come by beginning, then by end, then by id; voided ones are left out", () => {
    const lines = ["ward stay 7: A 20-", "ward stay 6: A 20-20", "ward stay 4: B 20-20", "ward stay 3: C 10-20"];
    const stay = stayFromLines("stay 1: 10-", ...lines, "ward stay 2: A 5-6");
    const wardStays = stay.wardStays.map((w) => (w.id === 2 ? { ...w, voidReason: "wrong" } : w));
    expect(wardStaysInOrder({ ...stay, wardStays }).map((w) => w.id)).toEqual([3, 4, 6, 7]);
  });

  it("end at infinity while the patient is there", () => {
    const ends = stayFromLines("stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: A 20-").wardStays.map(endOf);
    expect(ends).toEqual([20, Number.POSITIVE_INFINITY]);
  });
});

describe("an entry put in its place", () => {
  it("replaces the one of the same id where it stood, or comes last", () => {
    const record = timelineOf("stay 1: 10-20", "stay 2: 30-40");
    const [first] = record.stays;
    expect(linesOf(withStay(record, stayFromLines("stay 1: 11-20")))).toEqual(["stay 1: 11-20", "stay 2: 30-40"]);
    expect(linesOf(withStay(record, stayFromLines("stay 9: 50-"))).at(-1)).toBe("stay 9: 50-");
    expect(withEntry(record.stays, stayFromLines("stay 2: 31-40"))[0]).toBe(first);
    expect(record.stays).toHaveLength(2);
  });
});
