import { describe, expect, it } from "vitest";
import { lastSeen } from "../../../src/domain/timeline/last-seen.ts";

const none = { insertedAt: null, lastSeenAt: null, noted: null };

describe("when a catheter was last in sight", () => {
  it.each([
    { title: "never", of: none, seen: null },
    { title: "at its insertion", of: { ...none, insertedAt: 10 }, seen: 10 },
    { title: "when it was seen", of: { ...none, insertedAt: 10, lastSeenAt: 20 }, seen: 20 },
    { title: "at its last note", of: { insertedAt: 10, lastSeenAt: 20, noted: { first: 15, last: 30 } }, seen: 30 },
    { title: "after its last note", of: { ...none, lastSeenAt: 40, noted: { first: 15, last: 30 } }, seen: 40 },
  ])("is $title", ({ of, seen }) => {
    expect(lastSeen(of)).toBe(seen);
  });

  it("by an instant leaves out what came later", () => {
    const catheter = { insertedAt: 10, lastSeenAt: 20, noted: { first: 15, last: 30 } };
    expect([9, 10, 15, 20, 29, 30].map((until) => lastSeen(catheter, until))).toEqual([null, 10, 15, 20, 20, 30]);
  });
});
