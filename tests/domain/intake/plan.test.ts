import { describe, expect, it } from "vitest";
import { Problem } from "../../../shared/problems.ts";
import type { PatientLine } from "../../../src/domain/intake/intake-line.ts";
import {
  applyLine,
  entryMarks,
  made,
  notMadeHere,
  type Plan,
  refuseLine,
  sameAsRecorded,
} from "../../../src/domain/intake/plan.ts";
import { care, catheter, hour, move, plan, repeated, stay, summary } from "./lines.ts";

function emptyPlan(): Plan {
  return {
    ...{ timeline: { patientId: 1, stays: [] }, patientId: 1, wardIds: new Map(), newId: () => 1 },
    ...{
      outcomes: new Map(),
      madeBy: new Map(),
      reviews: new Map(),
      notes: [],
      cultures: { specimens: new Map(), signs: new Map() },
      care,
    },
  };
}

/** The outcome of a line whose step throws a problem with this pointer. */
function refusedAt(line: PatientLine, pointer: string, other?: string): string {
  const state = emptyPlan();
  made(state, "stay 7", stay(4, {}));
  applyLine(state, line, () => {
    throw new Problem({ code: "outside-stay", pointer, detail: "No.", ...(other ? { other } : {}) });
  });
  return summary(state.outcomes.get(line));
}

describe("one step of a plan", () => {
  it("keeps the new timeline and the marks of the step and of the line", () => {
    const state = emptyPlan();
    const line = repeated(move(2, {}), "from");
    const timeline = { patientId: 1, stays: [] };
    applyLine(state, line, () => ({ timeline, marks: ["absence-unknown"] }));
    expect(state.timeline).toBe(timeline);
    expect(state.outcomes.get(line)).toEqual({ state: "marked", marks: ["absence-unknown", "repeated-hour"] });
  });

  it("keeps the old timeline when the line is refused or says nothing new", () => {
    const state = emptyPlan();
    const { timeline } = state;
    const [first, second] = [move(2, {}), move(3, {})];
    applyLine(state, first, () => sameAsRecorded(state, { entry: "ward stay 3", line: first, endKept: false }));
    refuseLine(state, second, [{ code: "stay-refused", column: "stay", detail: "No." }]);
    expect(state.timeline).toBe(timeline);
    expect([first, second].map((line) => summary(state.outcomes.get(line)))).toEqual([
      "unchanged",
      "stay-refused stay",
    ]);
    expect(() => notMadeHere(state, "ward stay 3")).toThrow("Another line says something else");
  });

  it("names the column of the file that a field comes from", () => {
    const { stays, moves, catheters } = { stays: stay(2, {}), moves: move(2, {}), catheters: catheter(2, {}) };
    expect(refusedAt(stays, "/dischargedAt")).toBe("outside-stay discharged");
    expect(refusedAt(stays, "/startAt")).toBe("outside-stay admitted");
    expect(refusedAt(stays, "/endAt")).toBe("outside-stay discharged");
    expect(refusedAt(moves, "/endAt")).toBe("outside-stay to");
    expect(refusedAt(catheters, "/removedAt")).toBe("outside-stay removed");
    expect(refusedAt(catheters, "/lastSeenAt")).toBe("outside-stay last_seen");
    // A field that the file does not have is shown at the column of the time that the line is about.
    expect(refusedAt(moves, "/admittedAt")).toBe("outside-stay from");
    expect(refusedAt(catheters, "")).toBe("outside-stay inserted");
    expect(refusedAt(stays, "/number")).toBe("outside-stay admitted");
  });

  it("names the line that made the other entry, and no entry that came to nothing", () => {
    expect(refusedAt(move(2, {}), "/startAt", "stay 7")).toBe("outside-stay from see stays.csv line 4");
    expect(refusedAt(move(2, {}), "/startAt", "stay 8")).toBe("outside-stay from");
  });

  it("lets through what is no refusal: the program is wrong then", () => {
    const state = emptyPlan();
    const bug = () => {
      throw new TypeError("a bug");
    };
    expect(() => applyLine(state, move(2, {}), bug)).toThrow(TypeError);
  });

  it("names every fault of a line at once", () => {
    const { outcomes } = plan([
      stay(2, { admitted: hour(10), discharged: hour(20) }),
      move(2, { from: hour(10), to: hour(12) }),
      move(3, { ward: "B", from: hour(11), to: hour(30) }),
    ]);
    expect(outcomes[2]).toBe("outside-stay to see stays.csv line 2; move-overlaps from see moves.csv line 2");
  });
});

describe("the marks of a line", () => {
  it("stand on its entry under the names of the entry's fields", () => {
    const columns = ["admitted", "discharged", "from", "to", "inserted", "removed", "last_seen"];
    expect(entryMarks(repeated(stay(2, {}), ...columns))).toEqual(
      ["admittedAt", "dischargedAt", "startAt", "endAt", "insertedAt", "removedAt", "lastSeenAt"].map(
        (field) => `repeated-hour:${field}`,
      ),
    );
  });
});
