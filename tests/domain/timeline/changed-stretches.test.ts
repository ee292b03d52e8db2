import { expect, it } from "vitest";
import { changedStretches } from "../../../src/domain/timeline/changed-stretches.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { timelineOf } from "./written.ts";

const old = [
  "stay 1: 10-50",
  "ward stay 2: A 10-20",
  "ward stay 3: B 24-50",
  "catheter 4: 12-30",
  "catheter 5: 32- seen 34",
];
const before = timelineOf(...old);

/** The record with one line said otherwise or added; what did not change are the same objects. */
function withLine(line: string): PatientTimeline {
  const id = (text: string) => text.split(":")[0];
  const known = old.some((one) => id(one) === id(line));
  const [now] = timelineOf(...(known ? old.map((one) => (id(one) === id(line) ? line : one)) : [...old, line])).stays;
  const [was] = before.stays;
  if (!now || !was) throw new Error("the record has one stay");
  const kept = <T extends { id: number; version: number }>(mine: readonly T[], theirs: readonly T[]): T[] =>
    theirs.map((entry) => {
      const same = mine.find((one) => one.id === entry.id);
      if (same && JSON.stringify(same) === JSON.stringify(entry)) return same;
      return same ? { ...entry, version: 2 } : entry;
    });
  const isOther = line.startsWith("stay");
  const entries = { wardStays: kept(was.wardStays, now.wardStays), catheters: kept(was.catheters, now.catheters) };
  return { ...before, stays: [{ ...now, ...entries, version: isOther ? 2 : 1 }] };
}

it.each([
  { title: "a removal: from the earlier to the later one", line: "catheter 4: 12-27", is: { from: 27, to: 30 } },
  {
    title: "the first removal: from when it was last seen",
    line: "catheter 5: 32-40 seen 34",
    is: { from: 34, to: 50 },
  },
  { title: "an insertion: all of its time in place", line: "catheter 4: 14-30", is: { from: 12, to: 30 } },
  { title: "a new catheter: all of its time in place", line: "catheter 6: 41-45", is: { from: 41, to: 45 } },
  { title: "a discharge: from the earlier to the later one", line: "stay 1: 10-48", is: { from: 48, to: 50 } },
  { title: "an admission: all of the stay", line: "stay 1: 9-50", is: { from: 9, to: 50 } },
  { title: "the end of time on a ward: to the next one", line: "ward stay 2: A 10-18", is: { from: 18, to: 24 } },
  { title: "another ward: from the end of the one before", line: "ward stay 3: C 24-50", is: { from: 20, to: 50 } },
])("tells the stretch of $title", ({ line, is }) => {
  expect(changedStretches(before, withLine(line))).toEqual([is]);
});

it("tells nothing of what did not change, and all of what is new and lasts", () => {
  expect(changedStretches(before, { ...before, stays: [...before.stays] })).toEqual([]);
  expect(changedStretches({ patientId: 1, stays: [] }, timelineOf("stay 7: 60-", "ward stay 8: A 60-"))).toEqual([
    { from: 60, to: null },
    { from: 60, to: null },
  ]);
});
