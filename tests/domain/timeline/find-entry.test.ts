import { describe, expect, it } from "vitest";
import { catheterOf, stayOf, wardStayOf } from "../../../src/domain/timeline/find-entry.ts";
import { voidStay } from "../../../src/domain/timeline/void-entry.ts";
import { refusals } from "./refusals.ts";
import { timelineOf } from "./written.ts";

const record = timelineOf(
  "stay 1: 10-20",
  "ward stay 2: A 10-20",
  "stay 5: 30-",
  "ward stay 6: B 30-",
  "catheter 7: 31-",
);

describe("an entry of a patient", () => {
  it("is found with its stay", () => {
    expect(stayOf(record, 5)).toBe(record.stays[1]);
    expect(wardStayOf(record, 6)).toEqual({ stay: record.stays[1], wardStay: record.stays[1]?.wardStays[0] });
    expect(catheterOf(record, 7)).toEqual({ stay: record.stays[1], catheter: record.stays[1]?.catheters[0] });
  });

  it("is looked for by its kind: an id of another kind is not found", () => {
    for (const find of [() => stayOf(record, 7), () => wardStayOf(record, 1), () => catheterOf(record, 6)])
      expect(refusals(find)).toEqual(["not-found"]);
  });

  it("is named when it was voided, also with its stay", () => {
    const voided = voidStay(record, 5, "twice");
    expect(refusals(() => stayOf(voided, 5))).toEqual(["entry-voided see stay 5"]);
    expect(refusals(() => wardStayOf(voided, 6))).toEqual(["entry-voided see ward stay 6"]);
    expect(refusals(() => catheterOf(voided, 7))).toEqual(["entry-voided see catheter 7"]);
  });

  it("is named as voided when its stay alone was voided", () => {
    const { stays, ...rest } = record;
    const voided = { ...rest, stays: stays.map((s) => (s.id === 5 ? { ...s, voidReason: "twice" } : s)) };
    expect(refusals(() => catheterOf(voided, 7))).toEqual(["entry-voided see catheter 7"]);
  });
});
