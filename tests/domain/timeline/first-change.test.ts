import { describe, expect, it } from "vitest";
import { beginning, firstChange } from "../../../src/domain/timeline/first-change.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { stayFromLines, timelineOf } from "./written.ts";

const before = timelineOf("stay 1: 10-20", "ward stay 2: A 10-20", "stay 5: 30-40", "ward stay 6: A 30-40");

/** The record with another stay 5, stay 1 being the same object. */
function withStay5(...lines: string[]): PatientTimeline {
  return { ...before, stays: [...before.stays.slice(0, 1), ...timelineOf(...lines).stays] };
}

describe("the first instant that a change can touch", () => {
  it("is none when nothing changed", () => {
    expect(firstChange(before, { ...before, stays: [...before.stays] })).toBeNull();
  });

  it.each([
    { title: "of the changed stay alone", lines: ["stay 5: 30-50", "ward stay 6: A 30-50"], from: 30 },
    { title: "of what the stay was, when it begins later now", lines: ["stay 5: 35-40"], from: 30 },
    { title: "of what the stay is, when it begins earlier now", lines: ["stay 5: 25-40"], from: 25 },
    { title: "of a new stay", lines: ["stay 7: 60-", "ward stay 8: A 60-"], from: 60 },
  ])("is the beginning $title", ({ lines, from }) => {
    expect(firstChange(before, withStay5(...lines))).toBe(from);
  });

  it("is the earliest when several stays changed", () => {
    expect(firstChange(before, timelineOf("stay 1: 10-21", "stay 5: 30-41"))).toBe(10);
  });
});

describe("the beginning of a stay", () => {
  it("is the admission, or a ward stay before it when one slipped in", () => {
    expect(beginning(stayFromLines("stay 1: 10-", "ward stay 2: A 12-"))).toBe(10);
    expect(beginning(stayFromLines("stay 1: 10-", "ward stay 2: A 8-"))).toBe(8);
  });
});
