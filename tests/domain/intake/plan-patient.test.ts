import { describe, expect, it } from "vitest";
import { catheter, hour, move, plan, stay } from "./lines.ts";

describe("lines about one patient", () => {
  it("make a stay that runs from the first to the last move", () => {
    const { timeline, outcomes } = plan([
      move(3, { ward: "B", from: hour(10), to: hour(20) }),
      move(2, { from: hour(1), to: hour(10) }),
    ]);
    expect(outcomes).toEqual(["accepted", "accepted"]);
    expect(timeline.stays).toMatchObject([
      { number: "S1", admittedAt: hour(1), dischargedAt: hour(20), spanFromMoves: true },
    ]);
  });

  it("leave a stay open when its last move is", () => {
    const { timeline } = plan([move(2, { from: hour(1), to: hour(5) }), move(3, { from: hour(5) })]);
    expect(timeline.stays[0]?.dischargedAt).toBe(null);
  });

  it("mark a time off the wards, with or without its kind", () => {
    const { outcomes } = plan([
      move(2, { from: hour(1), to: hour(5), absence: "leave" }),
      move(3, { from: hour(7), to: hour(8) }),
      move(4, { from: hour(9), to: hour(10) }),
    ]);
    expect(outcomes).toEqual(["absence-known", "absence-unknown", "accepted"]);
  });

  it("refuse an overlapping move and name the line that it meets", () => {
    const { outcomes } = plan([
      move(2, { from: hour(1), to: hour(5) }),
      move(3, { ward: "B", from: hour(4), to: hour(9) }),
    ]);
    expect(outcomes).toEqual(["accepted", "move-overlaps from see moves.csv line 2"]);
  });

  it("refuse the later of two stays at once, with its catheters", () => {
    const { outcomes } = plan([
      stay(2, { stay: "S1", admitted: hour(1), discharged: hour(9) }),
      stay(3, { stay: "S2", admitted: hour(5), discharged: hour(12) }),
      move(2, { stay: "S2", from: hour(5), to: hour(12) }),
      catheter(2, { stay: "S2", inserted: hour(6) }),
    ]);
    expect(outcomes).toEqual([
      "accepted",
      "stay-overlaps admitted see stays.csv line 2",
      "stay-refused stay see stays.csv line 3",
      "stay-refused stay see stays.csv line 3",
    ]);
  });

  it("refuse what a catheter's own times or its stay contradict", () => {
    const { outcomes } = plan([
      move(2, { from: hour(10), to: hour(50) }),
      catheter(2, { inserted: hour(20), removed: hour(15) }),
      catheter(3, { inserted: hour(50), removed: hour(60) }),
      catheter(4, { inserted: hour(1), removed: hour(10) }),
      catheter(5, { removed: hour(30) }),
      catheter(6, { inserted: hour(20), removed: hour(30), last_seen: hour(31) }),
      catheter(7, { stay: "S9", inserted: hour(20) }),
    ]);
    expect(outcomes).toEqual([
      "accepted",
      "removal-before-insertion removed",
      "outside-stay inserted see moves.csv line 2",
      "outside-stay removed see moves.csv line 2",
      "insertion-unknown inserted",
      "seen-after-removal last_seen",
      "stay-unknown stay",
    ]);
  });

  it("mark a catheter in place on arrival, said or found, and one wholly inside a time off the wards", () => {
    const { outcomes, timeline } = plan([
      move(2, { from: hour(10), to: hour(20), absence: "procedure" }),
      move(3, { from: hour(30), to: hour(50) }),
      catheter(2, { inserted: hour(5), removed: hour(15) }),
      catheter(3, { in_place_on_arrival: true, removed: hour(15), kind: "suprapubic" }),
      catheter(4, { inserted: hour(22), removed: hour(25) }),
    ]);
    expect(outcomes.slice(2)).toEqual(["in-place-on-arrival", "in-place-on-arrival", "off-the-wards"]);
    expect(timeline.stays[0]?.catheters[1]).toMatchObject({ insertedAt: hour(5), inPlaceOnArrival: true });
  });

  it("change nothing when they are read again, and complete what was open", () => {
    const first = [stay(2, { admitted: hour(0) }), move(2, { from: hour(0) }), catheter(2, { inserted: hour(2) })];
    const before = plan(first).timeline;
    const again = plan(first, before, 200);
    expect(again.outcomes).toEqual(["unchanged", "unchanged", "unchanged"]);
    expect(again.timeline).toEqual(before);
    const later = plan(
      [
        stay(2, { admitted: hour(0), discharged: hour(40) }),
        move(2, { from: hour(0), to: hour(40) }),
        catheter(2, { inserted: hour(2), removed: hour(9) }),
      ],
      before,
      200,
    );
    expect(later.outcomes).toEqual(["accepted", "accepted", "accepted"]);
    expect(later.timeline.stays).toMatchObject([{ dischargedAt: hour(40), wardStays: [{ endAt: hour(40) }] }]);
  });

  it("come in the order in which the stays began, also of one whose line does not repeat its admission", () => {
    const before = plan([stay(2, { admitted: hour(0) }), move(2, { from: hour(0) })]).timeline;
    const { outcomes, timeline } = plan(
      [
        stay(2, { stay: "S2", admitted: hour(50) }),
        move(2, { stay: "S2", from: hour(50) }),
        stay(3, { stay: "S1", discharged: hour(40) }),
        move(3, { stay: "S1", from: hour(0), to: hour(40) }),
      ],
      before,
      200,
    );
    expect(outcomes).toEqual(["accepted", "accepted", "accepted", "accepted"]);
    expect(timeline.stays.map((s) => [s.number, s.admittedAt, s.dischargedAt])).toEqual([
      ["S1", hour(0), hour(40)],
      ["S2", hour(50), null],
    ]);
    const alone = [stay(2, { stay: "S2", admitted: hour(50) }), stay(3, { stay: "S1", discharged: hour(40) })];
    const off = plan([stay(2, { admitted: hour(0) }), move(2, { from: hour(0), to: hour(30) })]).timeline;
    expect(plan(alone, off, 200).outcomes).toEqual(["accepted", "accepted"]);
  });

  it("refuse a stay that ends before a recorded move does, with the rest of its lines", () => {
    const before = plan([stay(2, { admitted: hour(0) }), move(2, { from: hour(0) })]).timeline;
    const lines = [stay(2, { admitted: hour(0), discharged: hour(40) }), catheter(2, { inserted: hour(2) })];
    const later = plan(lines, before, 200);
    expect(later.outcomes).toEqual(["outside-stay discharged see stay 100", "stay-refused stay see stays.csv line 2"]);
    expect(later.timeline).toEqual(before);
  });

  it("refuse the second of two lines that contradict each other", () => {
    const { outcomes } = plan([
      stay(2, { admitted: hour(0), discharged: hour(40) }),
      stay(3, { admitted: hour(0), discharged: hour(50) }),
      move(2, { from: hour(0), to: hour(10) }),
      move(3, { from: hour(0), to: hour(12) }),
      catheter(2, { catheter: "C1", inserted: hour(2) }),
      catheter(3, { catheter: "C1", inserted: hour(3) }),
    ]);
    expect(outcomes).toEqual([
      "accepted",
      "line-contradicts admitted see stays.csv line 2",
      "accepted",
      "line-contradicts from see moves.csv line 2",
      "accepted",
      "line-contradicts inserted see catheters.csv line 2",
    ]);
  });
});
