import { describe, expect, it } from "vitest";
import { planPatient } from "../../../src/domain/intake/plan-patient.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { care, hour, move, plan, repeated, stay } from "./lines.ts";

const wardStays = (timeline: PatientTimeline) =>
  timeline.stays.flatMap((s) => s.wardStays.map(({ wardId, bed, startAt, endAt }) => [wardId, bed, startAt, endAt]));

describe("a line of moves.csv", () => {
  it("corrects the ward stay that began on that ward at that time", () => {
    const before = plan([move(2, { from: hour(1), to: hour(5), bed: "4" })]).timeline;
    const { outcomes, timeline } = plan([move(2, { from: hour(1), to: hour(8), bed: "6" })], before, 200);
    expect(outcomes).toEqual(["accepted"]);
    expect(wardStays(timeline)).toEqual([[1, "6", hour(1), hour(8)]]);
    expect(timeline.stays).toMatchObject([{ id: 100, dischargedAt: hour(8), wardStays: [{ id: 101, version: 2 }] }]);
  });

  it("with empty cells takes nothing back: what is recorded is kept, and a kept end is marked", () => {
    const first = move(2, { from: hour(1), to: hour(5), bed: "4", absence: "leave" });
    const before = plan([first, move(3, { from: hour(9), to: hour(12) })]).timeline;
    const nothing = plan([move(2, { from: hour(1) })], before, 200);
    expect(nothing.outcomes).toEqual(["end-kept"]);
    expect(nothing.timeline).toBe(before);
    const bed = plan([move(2, { from: hour(1), bed: "6" })], before, 200);
    expect(bed.outcomes).toEqual(["end-kept"]);
    expect(bed.timeline.stays[0]?.wardStays[0]).toMatchObject({ bed: "6", endAt: hour(5), absenceAfter: "leave" });
    const later = plan([move(2, { from: hour(1), to: hour(6) })], before, 200);
    expect(later.outcomes).toEqual(["accepted"]);
    expect(later.timeline.stays[0]?.wardStays[0]).toMatchObject({ bed: "4", endAt: hour(6), absenceAfter: "leave" });
  });

  it("is another ward stay when it begins at another time or on another ward", () => {
    const before = plan([move(2, { from: hour(1), to: hour(5) })]).timeline;
    const { outcomes, timeline } = plan(
      [move(2, { from: hour(5), to: hour(6) }), move(3, { ward: "B", from: hour(6), to: null })],
      before,
      200,
    );
    expect(outcomes).toEqual(["accepted", "accepted"]);
    expect(wardStays(timeline)).toEqual([
      [1, null, hour(1), hour(5)],
      [1, null, hour(5), hour(6)],
      [2, null, hour(6), null],
    ]);
  });

  it("is refused before the admission, after the discharge, and backwards", () => {
    const lines = [
      stay(2, { admitted: hour(10), discharged: hour(40) }),
      move(2, { from: hour(9), to: hour(20) }),
      move(3, { from: hour(30), to: hour(41) }),
      move(4, { from: hour(25), to: hour(24) }),
      move(5, { from: hour(30), to: null }),
    ];
    expect(plan(lines).outcomes).toEqual([
      "accepted",
      "outside-stay from see stays.csv line 2",
      "outside-stay to see stays.csv line 2",
      "end-before-start to",
      "outside-stay to see stays.csv line 2",
    ]);
    expect(plan([move(2, { from: hour(9), to: hour(8) })]).outcomes).toEqual(["end-before-start to"]);
  });

  it("is refused when it meets a recorded ward stay, which it names", () => {
    const before = plan([move(2, { from: hour(1), to: hour(5) })]).timeline;
    const { outcomes } = plan([move(7, { ward: "B", from: hour(4), to: hour(6) })], before, 200);
    expect(outcomes).toEqual(["move-overlaps from see ward stay 101"]);
  });

  it("is marked when time off the wards follows before the next move of its folder", () => {
    const kinds = [null, "leave", "procedure"] as const;
    const marks = kinds.map((absence) => {
      const { outcomes } = plan([
        move(2, { from: hour(1), to: hour(5), absence }),
        move(3, { from: hour(6), to: hour(7) }),
      ]);
      return outcomes[0];
    });
    expect(marks).toEqual(["absence-unknown", "absence-known", "absence-known"]);
  });

  it("leaves its marks on the ward stay, by the fields of the ward stay", () => {
    const first = plan([repeated(move(2, { from: hour(1), to: hour(5) }), "from")]);
    expect(first.timeline.stays[0]?.wardStays[0]?.marks).toEqual(["repeated-hour:startAt"]);
    const later = plan([repeated(move(2, { from: hour(1), to: hour(7) }), "to")], first.timeline, 200);
    expect(later.outcomes).toEqual(["repeated-hour"]);
    expect(later.timeline.stays[0]?.wardStays[0]?.marks).toEqual(["repeated-hour:endAt"]);
  });

  it("that was stored before changes nothing, and no new line of its folder may contradict it", () => {
    const seen = [move(2, { from: hour(1), to: hour(5) })];
    const { timeline } = plan(seen);
    const contradicting = move(3, { from: hour(1), to: hour(9) });
    const { outcomes } = planPatient({ timeline, patientId: 1, seen }, [contradicting], {
      wardIds: new Map([["A", 1]]),
      newId: () => 200,
      care,
    });
    expect(outcomes.get(contradicting)).toEqual({
      state: "refused",
      faults: [
        {
          code: "line-contradicts",
          column: "from",
          detail: 'Another line says something else about the same thing. The cell says "1970-01-01T01:00".',
          other: "moves.csv line 2",
        },
      ],
    });
  });

  it("names a ward that somebody made: else the program is wrong", () => {
    expect(() => plan([move(2, { ward: "C", from: hour(1) })])).toThrow("a ward that nobody made");
  });
});
