import { describe, expect, it } from "vitest";
import { correctCatheter, correctStay, correctWardStay } from "../../../src/domain/timeline/correct-entry.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf, wardIds } from "./written.ts";

const record = timelineOf(
  "stay 1: 10-50",
  "ward stay 2: A 12-20 then leave",
  "ward stay 3: B 30-50",
  "catheter 4: 14-",
  "stay 5: 60-",
);

/** The lines that a correction changed. */
function changed(correct: (before: PatientTimeline) => PatientTimeline): string[] {
  const before = linesOf(record);
  return linesOf(correct(record)).filter((line) => !before.includes(line));
}

describe("a correction", () => {
  it("of a stay moves its ends", () => {
    expect(changed((t) => correctStay(t, 1, { admittedAt: 12, dischargedAt: 55 }))).toEqual(["stay 1: 12-55 v2"]);
  });

  it("of an admission tells which catheters came with the patient", () => {
    const before = timelineOf("stay 1: 10-50", "ward stay 2: A 20-50", "catheter 4: arrived 8-", "catheter 5: 12-");
    const admitted = (admittedAt: number) => linesOf(correctStay(before, 1, { admittedAt })).slice(2);
    expect(admitted(5)).toEqual(["catheter 4: 8- v2", "catheter 5: 12-"]);
    expect(admitted(15)).toEqual(["catheter 4: arrived 8-", "catheter 5: arrived 12- v2"]);
    const gone = () => correctStay(timelineOf("stay 1: 10-50", "catheter 5: 12-14"), 1, { admittedAt: 15 });
    expect(refusals(gone)).toEqual(["outside-stay see stay 1"]);
  });

  it("of the times of a stay ends that they follow its moves; one of anything else does not", () => {
    const [stay] = record.stays;
    if (!stay) throw new Error("the record has no stay");
    const followed = { patientId: 1, stays: [{ ...stay, spanFromMoves: true }] };
    const follows = (changes: Parameters<typeof correctStay>[2]) =>
      correctStay(followed, 1, changes).stays[0]?.spanFromMoves;
    expect([follows({ admittedAt: 11 }), follows({ dischargedAt: 55 }), follows({ dischargedAt: null })]).toEqual([
      ...[false, false, false],
    ]);
    expect(follows({ disposition: "home" })).toBe(true);
  });

  it("of a stay may change its number and disposition", () => {
    const [stay] = correctStay(record, 1, { number: "S-9", disposition: "died" }).stays;
    expect(stay).toMatchObject({ number: "S-9", disposition: "died", version: 2, admittedAt: 10 });
  });

  it("of a ward stay changes its ward, times, bed and the absence after it", () => {
    const changes = { wardId: wardIds.C, startAt: 11, endAt: 25, absenceAfter: null, bed: "7" } as const;
    expect(changed((t) => correctWardStay(t, 2, changes))).toEqual(["ward stay 2: C 11-25 v2"]);
    expect(correctWardStay(record, 2, changes).stays[0]?.wardStays[0]?.bed).toBe("7");
  });

  it("of a catheter changes anything that was said of it", () => {
    const changes = { kind: "suprapubic", insertedAt: null, inPlaceOnArrival: true, removedAt: 40 } as const;
    expect(changed((t) => correctCatheter(t, 4, changes))).toEqual(["catheter 4: arrived ?-40 suprapubic v2"]);
  });

  it.each([
    { title: "a stay that would leave a ward stay outside", act: () => correctStay(record, 1, { admittedAt: 13 }) },
    { title: "a stay that would end too early", act: () => correctStay(record, 1, { dischargedAt: 49 }) },
    { title: "a ward stay that would leave its stay", act: () => correctWardStay(record, 3, { endAt: 51 }) },
    { title: "a catheter that would leave its stay", act: () => correctCatheter(record, 4, { insertedAt: 9 }) },
  ])("is refused for $title", ({ act }) => {
    expect(refusals(act)).toEqual(["outside-stay see stay 1"]);
  });

  it.each([
    { act: () => correctStay(record, 1, { dischargedAt: 61 }), refused: ["stay-overlaps see stay 5"] },
    { act: () => correctWardStay(record, 3, { startAt: 19 }), refused: ["move-overlaps see ward stay 2"] },
    { act: () => correctWardStay(record, 2, { endAt: 11 }), refused: ["end-before-start"] },
    { act: () => correctCatheter(record, 4, { removedAt: 13 }), refused: ["removal-before-insertion"] },
    { act: () => correctCatheter(record, 4, { insertedAt: null }), refused: ["insertion-unknown"] },
    { act: () => correctStay(record, 9, {}), refused: ["not-found"] },
    { act: () => correctWardStay(record, 9, {}), refused: ["not-found"] },
    { act: () => correctCatheter(record, 9, {}), refused: ["not-found"] },
  ])("is refused as $refused.0", ({ act, refused }) => {
    expect(refusals(act)).toEqual(refused);
  });
});
