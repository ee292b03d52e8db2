import { describe, expect, it } from "vitest";
import { planPatient } from "../../../src/domain/intake/plan-patient.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { care, catheter, hour, move, plan, repeated, stay } from "./lines.ts";

const place = move(2, { from: hour(10), to: hour(90) });
const catheters = (timeline: PatientTimeline) => timeline.stays[0]?.catheters ?? [];
const recorded = (...lines: ReturnType<typeof catheter>[]) => plan([place, ...lines]).timeline;

describe("a line of catheters.csv", () => {
  it("corrects the catheter that has its number, also its insertion", () => {
    const before = recorded(catheter(2, { catheter: "C1", inserted: hour(20) }));
    const said = { catheter: "C1", inserted: hour(22), removed: hour(30), size_fr: 14, balloon_ml: 10 };
    const { outcomes, timeline } = plan([catheter(2, said)], before, 200);
    expect(outcomes).toEqual(["accepted"]);
    expect(catheters(timeline)).toMatchObject([
      { id: 102, number: "C1", insertedAt: hour(22), removedAt: hour(30), sizeFr: 14, balloonMl: 10, version: 2 },
    ]);
  });

  it("without a number corrects the one of its kind that was inserted at its time", () => {
    const before = recorded(catheter(2, { inserted: hour(20) }));
    const { timeline } = plan(
      [
        catheter(2, { inserted: hour(20), removed: hour(30) }),
        catheter(3, { inserted: hour(20), kind: "suprapubic" }),
        catheter(4, { inserted: hour(21) }),
      ],
      before,
      200,
    );
    expect(catheters(timeline).map((c) => [c.kind, c.insertedAt, c.removedAt])).toEqual([
      ["indwelling-urethral", hour(20), hour(30)],
      ["suprapubic", hour(20), null],
      ["indwelling-urethral", hour(21), null],
    ]);
  });

  it("that adds a number to a recorded catheter of the same kind and insertion is that catheter", () => {
    const before = recorded(catheter(2, { inserted: hour(20) }));
    const lines = [catheter(2, { catheter: "C1", inserted: hour(20), removed: hour(30) })];
    const { outcomes, timeline } = plan(lines, before, 200);
    expect(outcomes).toEqual(["accepted"]);
    expect(catheters(timeline).map((c) => [c.number, c.removedAt])).toEqual([["C1", hour(30)]]);
    const other = plan([catheter(2, { catheter: "C2", inserted: hour(20) })], timeline, 300);
    expect(catheters(other.timeline).map((c) => c.number)).toEqual(["C1", "C2"]);
  });

  it("with an empty cell takes nothing back: the recorded removal is kept, and the line is marked", () => {
    const before = recorded(catheter(2, { catheter: "C1", inserted: hour(20), removed: hour(30), size_fr: 14 }));
    const again = plan([catheter(2, { catheter: "C1", inserted: hour(20), balloon_ml: 10 })], before, 200);
    expect(again.outcomes).toEqual(["end-kept"]);
    expect(catheters(again.timeline)).toMatchObject([{ removedAt: hour(30), sizeFr: 14, balloonMl: 10 }]);
    const nothing = plan([catheter(2, { catheter: "C1", inserted: hour(20) })], before, 200);
    expect(nothing.outcomes).toEqual(["end-kept"]);
    expect(nothing.timeline).toBe(before);
  });

  it("that leaves open whether it came along keeps what was said, unless the times tell", () => {
    const said = { catheter: "C1", inserted: hour(10), in_place_on_arrival: true };
    const before = recorded(catheter(2, said));
    const line = (values: object) => plan([catheter(2, { catheter: "C1", size_fr: 14, ...values })], before, 200);
    const inPlace = (values: object) => catheters(line(values).timeline).map((c) => c.inPlaceOnArrival);
    expect(inPlace({ inserted: hour(10) })).toEqual([true]);
    expect(inPlace({})).toEqual([true]);
    expect(inPlace({ inserted: hour(9) })).toEqual([true]);
    expect(inPlace({ inserted: hour(11) })).toEqual([false]);
    expect(inPlace({ inserted: hour(10), in_place_on_arrival: false })).toEqual([false]);
  });

  it("said to have been in place on arrival and put in after it is refused", () => {
    const { outcomes } = plan([place, catheter(2, { inserted: hour(11), in_place_on_arrival: true })]);
    expect(outcomes).toEqual(["accepted", "arrival-contradicts inserted see moves.csv line 2"]);
  });

  it("with an exact removal takes the place of one known to lie between two times", () => {
    const recordedOne = recorded(catheter(2, { catheter: "C1", inserted: hour(20) }));
    const [stay] = recordedOne.stays;
    if (!stay) throw new Error("no stay was recorded");
    const between = { removedAfterAt: hour(25), removedBeforeAt: hour(28) };
    const found = { ...stay, catheters: stay.catheters.map((c) => ({ ...c, ...between })) };
    const lines = [catheter(2, { catheter: "C1", inserted: hour(20), removed: hour(26) })];
    const { timeline } = plan(lines, { ...recordedOne, stays: [found] }, 200);
    expect(catheters(timeline)).toMatchObject([{ removedAt: hour(26), removedAfterAt: null, removedBeforeAt: null }]);
  });

  it("that corrects is refused when the correction cannot be true, and leaves what is recorded", () => {
    const before = recorded(catheter(2, { catheter: "C1", inserted: hour(20), removed: hour(30) }));
    const { outcomes, timeline } = plan(
      [catheter(2, { catheter: "C1", inserted: hour(40), removed: hour(30) })],
      before,
      200,
    );
    expect(outcomes).toEqual(["removal-before-insertion removed"]);
    expect(timeline).toBe(before);
  });

  it("says whether it was in place on arrival, or the times tell", () => {
    const { outcomes, timeline } = plan([
      place,
      catheter(2, { catheter: "C1", inserted: hour(9) }),
      catheter(3, { catheter: "C2", inserted: hour(10) }),
      catheter(4, { catheter: "C3", inserted: hour(10), in_place_on_arrival: true }),
      catheter(5, { catheter: "C4", in_place_on_arrival: false }),
      catheter(6, { catheter: "C5", inserted: hour(9), in_place_on_arrival: false }),
    ]);
    expect(outcomes.slice(1)).toEqual([
      "in-place-on-arrival",
      "accepted",
      "in-place-on-arrival",
      "insertion-unknown inserted",
      "outside-stay inserted see moves.csv line 2",
    ]);
    expect(catheters(timeline).map((c) => [c.number, c.inPlaceOnArrival])).toEqual([
      ["C1", true],
      ["C2", false],
      ["C3", true],
    ]);
  });

  it("is refused when it was seen at a time at which it cannot have been in place", () => {
    const { outcomes } = plan([
      place,
      catheter(2, { inserted: hour(20), last_seen: hour(19) }),
      catheter(3, { inserted: hour(21), removed: hour(30), last_seen: hour(30) }),
    ]);
    expect(outcomes).toEqual(["accepted", "seen-before-insertion last_seen", "accepted"]);
  });

  it("removed after a discharge that was told is marked, and not where only moves tell of the stay", () => {
    const late = catheter(2, { inserted: hour(20), removed: hour(91) });
    const told = stay(2, { admitted: hour(10), discharged: hour(90) });
    expect(plan([told, place, late]).outcomes).toEqual(["accepted", "accepted", "removed-after-discharge"]);
    expect(plan([told, place, catheter(2, { inserted: hour(20), removed: hour(90) })]).outcomes[2]).toBe("accepted");
    expect(plan([place, late]).outcomes).toEqual(["accepted", "accepted"]);
  });

  it("leaves its marks on the catheter, by the fields of the catheter", () => {
    const marked = repeated(
      catheter(2, { inserted: hour(20), removed: hour(30), last_seen: hour(25) }),
      ...["inserted", "removed", "last_seen"],
    );
    const { outcomes, timeline } = plan([place, marked]);
    expect(outcomes[1]).toBe("repeated-hour repeated-hour repeated-hour");
    expect(catheters(timeline)[0]?.marks).toEqual([
      "repeated-hour:insertedAt",
      "repeated-hour:removedAt",
      "repeated-hour:lastSeenAt",
    ]);
    const later = plan([catheter(2, { inserted: hour(20), removed: hour(31), last_seen: hour(25) })], timeline, 200);
    expect(catheters(later.timeline)[0]?.marks).toEqual([]);
  });

  it("that was stored before cannot be contradicted by a new line of its folder", () => {
    const seen = [catheter(2, { catheter: "C1", inserted: hour(20) })];
    const line = catheter(3, { catheter: "C1", inserted: hour(21) });
    const start = { timeline: recorded(...seen), patientId: 1, seen };
    const { outcomes } = planPatient(start, [line], { wardIds: new Map(), newId: () => 200, care });
    expect(outcomes.get(line)).toMatchObject({
      state: "refused",
      faults: [{ code: "line-contradicts", other: "catheters.csv line 2" }],
    });
  });
});
