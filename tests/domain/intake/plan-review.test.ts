import { describe, expect, it } from "vitest";
import { planPatient } from "../../../src/domain/intake/plan-patient.ts";
import type { CatheterNote } from "../../../src/domain/timeline/note.ts";
import { care, catheter, hour, move, plan, review, summary } from "./lines.ts";

/** Ten days on ward A, with catheter C1 from the first day to the sixth and C2 from then on. */
const course = [
  move(2, { from: hour(0) }),
  catheter(2, { catheter: "C1", inserted: hour(10), removed: hour(130) }),
  catheter(3, { catheter: "C2", inserted: hour(130) }),
];
const keep = { outcome: "keep", indication: "perioperative" } as const;
const { timeline } = plan(course);
const [one, two] = timeline.stays[0]?.catheters.map(({ id }) => id) ?? [];

/** What lines make of the recorded course and of these reviews. */
const reviewed = (lines: Parameters<typeof plan>[0], known: readonly CatheterNote[] = []) =>
  plan(lines, timeline, 200, known);

describe("a line of reviews.csv", () => {
  it("is a review of the catheter with that number, or of the one in place at that time", () => {
    const { notes, outcomes } = reviewed([
      review(2, { ...keep, day: hour(34), note: "Day after surgery" }),
      review(3, { catheter: "C1", day: hour(35), outcome: "ask" }),
      review(4, { day: hour(140), outcome: "remove", written: hour(150) }),
    ]);
    expect(outcomes).toEqual(["accepted", "accepted", "accepted"]);
    expect(notes.map(({ old, now }) => [old, now.catheterId, now.at, now.outcome, now.indication, now.remark])).toEqual(
      [
        [null, one, hour(34), "keep", "perioperative", "Day after surgery"],
        [null, one, hour(35), "ask", null, null],
        [null, two, hour(140), "remove", null, null],
      ],
    );
    expect(notes.map(({ now }) => [now.kind, now.writtenAt, now.writtenBy])).toEqual([
      ...[
        ["review", care.now, 7],
        ["review", care.now, 7],
        ["review", hour(150), 7],
      ],
    ]);
  });

  it("comes with the catheter that the same folder brings", () => {
    const { notes, outcomes } = plan([...course, review(2, { ...keep, day: hour(34) })]);
    expect(outcomes.at(-1)).toBe("accepted");
    expect(notes).toHaveLength(1);
  });

  it("is refused as a person is, with its column", () => {
    const lines = [
      review(2, { outcome: "keep", day: hour(34) }),
      review(3, { outcome: "keep", indication: "habit", day: hour(34) }),
      review(4, { outcome: "remove", indication: "perioperative", day: hour(34) }),
      review(5, { ...keep, catheter: "C1", day: hour(131) }),
      review(6, { ...keep, catheter: "C9", day: hour(34) }),
      review(7, { ...keep, day: hour(5) }),
      review(8, { ...keep, day: hour(34), written: hour(33) }),
      review(9, { ...keep, stay: "S9", day: hour(34) }),
    ];
    const { notes, outcomes } = reviewed(lines);
    expect(notes).toEqual([]);
    expect(outcomes).toEqual([
      "indication-missing indication",
      "indication-unknown indication",
      "field-unreadable indication",
      `not-in-place day see catheter ${one}`,
      "catheter-unknown catheter",
      "catheter-unknown stay",
      "written-too-early written",
      "stay-unknown stay",
    ]);
  });

  it("of a day alone takes noon, or the nearest time at which the catheter was in place, and is marked", () => {
    const noonOf = (day: number) => hour(day * 24 + 12);
    const { notes, outcomes } = reviewed([
      review(2, { ...keep, day: noonOf(2) }, true),
      review(3, { ...keep, catheter: "C1", day: noonOf(5) }, true),
      review(4, { ...keep, catheter: "C2", day: noonOf(8), written: hour(8 * 24 + 9) }, true),
      review(5, { ...keep, day: noonOf(11) }, true),
      review(6, { ...keep, day: noonOf(5) }, true),
      review(7, { ...keep, catheter: "C1", day: noonOf(9) }, true),
    ]);
    expect(notes.map(({ now }) => now.at)).toEqual([noonOf(2), hour(130), hour(8 * 24 + 9)]);
    expect(notes.map(({ now }) => now.marks)).toEqual(notes.map(() => ["time-unknown:at"]));
    expect(outcomes).toEqual([
      ...["time-unknown", "time-unknown", "time-unknown"],
      "in-the-future day",
      "catheter-unclear stay",
      `not-in-place day see catheter ${one}`,
    ]);
  });

  it("said again changes nothing; another answer to the same is a correction, a question beside it is not", () => {
    const known = reviewed([review(2, { ...keep, day: hour(34) })]).notes.map(({ now }) => now);
    expect(reviewed([review(2, { ...keep, day: hour(34) })], known)).toMatchObject({
      notes: [],
      outcomes: ["unchanged"],
    });
    const { notes, outcomes } = reviewed(
      [review(2, { outcome: "remove", day: hour(34) }), review(3, { outcome: "ask", day: hour(34) })],
      known,
    );
    expect(outcomes).toEqual(["accepted", "accepted"]);
    expect(notes).toMatchObject([
      { old: known[0], now: { id: known[0]?.id, version: 2, outcome: "remove", indication: null } },
      { old: null, now: { outcome: "ask" } },
    ]);
  });

  it("is not contradicted by another line of its folder, also when it was stored before", () => {
    const said = review(2, { ...keep, day: hour(34) });
    const other = review(3, { outcome: "remove", day: hour(34) });
    expect(reviewed([said, { ...said, line: 4 }, other]).outcomes).toEqual([
      ...["accepted", "unchanged", "line-contradicts day see reviews.csv line 4"],
    ]);
    const reviews = reviewed([said]).notes.map(({ now }) => now);
    const start = { timeline, patientId: 1, reviews, seen: [said] };
    const { outcomes } = planPatient(start, [other], { wardIds: new Map(), newId: () => 300, care });
    expect(summary(outcomes.get(other))).toBe("line-contradicts day see reviews.csv line 2");
  });
});
