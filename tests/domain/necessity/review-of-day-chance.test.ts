import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ReviewState } from "../../../src/domain/necessity/review-of-day.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { type Asked, moved, reviewOf } from "./asked-review.ts";
import { policyWith } from "./written-notes.ts";

describe("any day with moves, a catheter and reviews", () => {
  const minute = (n: number) => `${String(Math.floor(n / 60)).padStart(2, "0")}:${String(n % 60).padStart(2, "0")}`;
  const ofDay = fc.integer({ min: 0, max: 24 * 60 - 1 });
  const days = fc.record({
    hourA: ofDay,
    hourB: ofDay,
    moveAt: ofDay,
    removedAt: fc.option(ofDay),
    made: fc.array(fc.record({ at: ofDay, outcome: fc.constantFrom("keep", "remove", "ask") }), { maxLength: 4 }),
    nows: fc.array(ofDay, { minLength: 2, maxLength: 6 }),
  });
  type Day = typeof days extends fc.Arbitrary<infer T> ? T : never;

  function asked({ hourA, hourB, moveAt, removedAt, made }: Day): Omit<Asked, "now"> {
    const removal = removedAt === null ? "" : `07/${minute(removedAt)}`;
    return {
      lines: [...moved(minute(moveAt)).slice(0, 3), `catheter 3: 05/09:00-${removal}`],
      notes: made.map(({ at, outcome }) => `review 3 07/${minute(at)} ${outcome}`),
      policy: (id) => policyWith({ reviewDueAt: minute(id === wardIds.A ? hourA : hourB) }, { wardId: id }),
    };
  }

  it("owes one review, at an hour that finds the catheter in place, or none because none of its hours does", () => {
    fc.assert(
      fc.property(days, (day) => {
        const { owed } = reviewOf({ ...asked(day), now: "08/10:00" });
        const { hourA, hourB, moveAt } = day;
        const removedAt = day.removedAt ?? Number.POSITIVE_INFINITY;
        const own = [...(hourA < moveAt ? [hourA] : []), ...(hourB >= moveAt ? [hourB] : [])];
        const counted = own.length > 0 ? own : [Math.max(hourA, hourB)];
        const inPlace = counted.filter((hour) => hour < removedAt);
        const expected = inPlace.length === 0 ? undefined : march("07", minute(Math.min(...inPlace)));
        expect(owed?.dueAt).toBe(expected);
        if (owed) expect(owed.wardId).toBe(owed.dueAt < march("07", minute(moveAt)) ? wardIds.A : wardIds.B);
      }),
    );
  });

  it("goes on in one direction as time passes, and ends answered or missed when one was owed", () => {
    const next: Record<ReviewState, ReviewState[]> = {
      "not-due": ["asked", "done"],
      due: ["asked", "overdue", "done", "late", "missed"],
      asked: ["overdue", "done", "late", "missed"],
      overdue: ["late", "missed"],
      done: [],
      late: [],
      missed: [],
    };
    fc.assert(
      fc.property(days, (day) => {
        const times = [...day.nows.toSorted((a, b) => a - b).map((now) => `07/${minute(now)}`), "08/10:00"];
        const reviews = times.map((now) => reviewOf({ ...asked(day), now }));
        for (const [i, { state }] of reviews.entries()) {
          const before = reviews[i - 1]?.state ?? state;
          expect([before, ...next[before]]).toContain(state);
        }
        const last = reviews.at(-1);
        const answered = day.made.some(({ outcome }) => outcome !== "ask");
        if (last?.owed) expect(["done", "late"].includes(last.state)).toBe(answered);
        if (last?.owed && !answered) expect(last.state).toBe("missed");
      }),
    );
  });
});
