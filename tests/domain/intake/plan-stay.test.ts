import { describe, expect, it } from "vitest";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { catheter, hour, move, plan, repeated, stay } from "./lines.ts";

/** A recorded stay from hour 10 to hour 40, with one move over all of it. */
function recorded(): PatientTimeline {
  return plan([
    stay(2, { admitted: hour(10), discharged: hour(40), disposition: "home" }),
    move(2, { from: hour(10), to: hour(40) }),
  ]).timeline;
}

const span = (timeline: PatientTimeline) => {
  const { admittedAt, dischargedAt, spanFromMoves, version, disposition } = timeline.stays[0] ?? {};
  return { admittedAt, dischargedAt, spanFromMoves, version, disposition };
};

describe("a line of stays.csv", () => {
  it.each([
    ["a later discharge", { admitted: hour(10), discharged: hour(50) }],
    ["an earlier admission", { admitted: hour(5), discharged: hour(40) }],
    ["both ends wider", { admitted: hour(5), discharged: hour(50) }],
  ])("corrects a recorded stay by its number: %s", (_, said) => {
    const { outcomes, timeline } = plan([stay(2, said)], recorded(), 200);
    expect(outcomes).toEqual(["accepted"]);
    expect(span(timeline)).toEqual({
      admittedAt: said.admitted,
      dischargedAt: said.discharged,
      spanFromMoves: false,
      version: 2,
      disposition: "home",
    });
  });

  it("with no discharge keeps the recorded one, and is marked", () => {
    const before = recorded();
    const { outcomes, timeline } = plan([stay(2, { admitted: hour(10), discharged: null })], before, 200);
    expect(outcomes).toEqual(["end-kept"]);
    expect(timeline.stays[0]?.dischargedAt).toBe(hour(40));
  });

  it("leaves the recorded stay untouched when it says the same, or says nothing of its times", () => {
    const before = recorded();
    for (const said of [{ admitted: hour(10), discharged: hour(40) }, {}, { disposition: "home" }]) {
      const { outcomes, timeline } = plan([stay(2, said)], before, 200);
      expect(outcomes).toEqual(["unchanged"]);
      expect(timeline.stays[0]).toBe(before.stays[0]);
    }
  });

  it("that corrects the admission tells which catheters came along, whether their lines come again or not", () => {
    const place = [stay(2, { admitted: hour(10) }), move(2, { from: hour(20) })];
    const lines = [
      catheter(2, { catheter: "C1", inserted: hour(8) }),
      catheter(3, { catheter: "C2", inserted: hour(12) }),
    ];
    const before = plan([...place, ...lines]).timeline;
    const admitted = (at: number, again: readonly ReturnType<typeof catheter>[]) => {
      const { outcomes, timeline } = plan([stay(2, { admitted: hour(at) }), ...again], before, 200);
      return [outcomes[0], ...(timeline.stays[0]?.catheters ?? []).map((c) => [c.number, c.inPlaceOnArrival])];
    };
    for (const again of [[], lines]) {
      expect(admitted(5, again)).toEqual(["accepted", ["C1", false], ["C2", false]]);
      expect(admitted(15, again)).toEqual(["accepted", ["C1", true], ["C2", true]]);
    }
  });

  it("completes what is known and keeps the times of a stay of which it gives none", () => {
    const { outcomes, timeline } = plan([stay(2, { disposition: "nursing home" })], recorded(), 200);
    expect(outcomes).toEqual(["accepted"]);
    expect(span(timeline)).toMatchObject({
      admittedAt: hour(10),
      dischargedAt: hour(40),
      disposition: "nursing home",
      version: 2,
    });
  });

  it("gives its own times to a stay that only moves had described", () => {
    const before = plan([move(2, { from: hour(10), to: hour(40) })]).timeline;
    const lines = [stay(2, { admitted: hour(8), discharged: hour(44) }), catheter(2, { inserted: hour(42) })];
    const { outcomes, timeline } = plan(lines, before, 200);
    // Neither line was refused: the catheter lies inside the stay, after the only move.
    expect(outcomes).toEqual(["accepted", "off-the-wards"]);
    expect(span(timeline)).toMatchObject({ admittedAt: hour(8), dischargedAt: hour(44), spanFromMoves: false });
  });

  it("with an admission alone takes the end of the moves for no discharge, whichever came first", () => {
    const [line, first] = [stay(2, { admitted: hour(10) }), move(2, { from: hour(10), to: hour(40) })];
    const next = move(3, { ward: "B", from: hour(45) });
    const together = plan([line, first]).timeline;
    const before = plan([first]).timeline;
    const { outcomes, timeline } = plan([line], before, 200);
    expect(outcomes).toEqual(["accepted"]);
    for (const either of [together, timeline]) {
      expect(span(either)).toMatchObject({ admittedAt: hour(10), dischargedAt: null, spanFromMoves: false });
      expect(plan([next], either, 300).outcomes).toEqual(["accepted"]);
    }
    const oneFolder = plan([line, first, next], before, 400);
    expect(oneFolder.outcomes).toEqual(["accepted", "unchanged", "accepted"]);
    expect(span(oneFolder.timeline)).toMatchObject({ dischargedAt: null });
  });

  it("takes both times from the moves when it gives neither", () => {
    const { outcomes, timeline } = plan([
      stay(2, { disposition: "home" }),
      move(2, { from: hour(3), to: hour(9) }),
      move(3, { ward: "B", from: hour(9), to: hour(30) }),
    ]);
    expect(outcomes).toEqual(["accepted", "accepted", "accepted"]);
    expect(span(timeline)).toMatchObject({ admittedAt: hour(3), dischargedAt: hour(30), spanFromMoves: true });
  });

  it("is refused when nothing tells the admission, with the rest of its stay", () => {
    const { outcomes, timeline } = plan([stay(2, {}), catheter(2, { inserted: hour(4) })]);
    expect(outcomes).toEqual(["field-missing admitted", "stay-refused stay see stays.csv line 2"]);
    expect(timeline.stays).toEqual([]);
  });

  it("is refused when it ends before it begins, or meets another recorded stay", () => {
    expect(plan([stay(2, { admitted: hour(9), discharged: hour(8) })]).outcomes).toEqual([
      "end-before-start discharged",
    ]);
    const other = plan([stay(3, { stay: "S2", admitted: hour(30), discharged: hour(50) })], recorded(), 200);
    expect(other.outcomes).toEqual(["stay-overlaps admitted see stay 100"]);
  });

  it("may begin at the very instant at which another stay ends", () => {
    const { outcomes } = plan([stay(3, { stay: "S2", admitted: hour(40) })], recorded(), 200);
    expect(outcomes).toEqual(["accepted"]);
  });

  it("contradicts another line of its folder whether that one changed something or not", () => {
    const lines = [
      stay(2, { admitted: hour(10), discharged: hour(40), disposition: "home" }),
      stay(3, { admitted: hour(10), discharged: hour(50) }),
    ];
    const { outcomes, timeline } = plan(lines, recorded(), 200);
    expect(outcomes).toEqual(["unchanged", "line-contradicts admitted see stays.csv line 2"]);
    expect(span(timeline)).toMatchObject({ dischargedAt: hour(40), version: 1 });
  });

  it("leaves its marks on the stay, by the fields of the stay, and takes them back when corrected", () => {
    const marked = repeated(stay(2, { admitted: hour(1), discharged: hour(9) }), "admitted", "discharged");
    const first = plan([marked]);
    expect(first.outcomes).toEqual(["repeated-hour repeated-hour"]);
    expect(first.timeline.stays[0]?.marks).toEqual(["repeated-hour:admittedAt", "repeated-hour:dischargedAt"]);
    const later = plan(
      [repeated(stay(2, { admitted: hour(1), discharged: hour(8) }), "admitted")],
      first.timeline,
      200,
    );
    expect(later.timeline.stays[0]?.marks).toEqual(["repeated-hour:admittedAt"]);
  });
});
