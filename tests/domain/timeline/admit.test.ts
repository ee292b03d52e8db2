import { describe, expect, it } from "vitest";
import { admit } from "../../../src/domain/timeline/admit.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf, wardIds } from "./written.ts";

const admission = { stayId: 7, wardStayId: 8, patientId: 1, number: "S-7", wardId: wardIds.A, bed: "3" };

describe("an admission", () => {
  it("begins a stay and its first time on a ward", () => {
    const after = admit(timelineOf(), { ...admission, admittedAt: 40 });
    expect(linesOf(after)).toEqual(["stay 7: 40-", "ward stay 8: A 40-"]);
    expect(after.stays[0]).toMatchObject({ number: "S-7", patientId: 1, disposition: null, spanFromMoves: false });
    expect(after.stays[0]?.wardStays[0]?.bed).toBe("3");
  });

  it("may follow a discharge at the same instant, and leaves the earlier stay as it is", () => {
    const before = timelineOf("stay 1: 10-40", "ward stay 2: B 10-40");
    const after = admit(before, { ...admission, admittedAt: 40 });
    expect(linesOf(after)).toEqual([...linesOf(before), "stay 7: 40-", "ward stay 8: A 40-"]);
    expect(after.stays[0]).toBe(before.stays[0]);
  });

  it("keeps a mark of a local time that occurred twice", () => {
    const after = admit(timelineOf(), { ...admission, admittedAt: 40, marks: ["repeated-hour:admittedAt"] });
    expect(after.stays[0]?.marks).toEqual(["repeated-hour:admittedAt"]);
  });

  it.each([
    { title: "while the patient is here", lines: ["stay 1: 10-", "ward stay 2: A 10-"] },
    { title: "before the discharge", lines: ["stay 1: 10-41", "ward stay 2: A 10-41"] },
    { title: "before a stay that was recorded already", lines: ["stay 1: 60-70", "ward stay 2: A 60-70"] },
  ])("is refused $title", ({ lines }) => {
    const act = () => admit(timelineOf(...lines), { ...admission, admittedAt: 40 });
    expect(refusals(act)).toEqual(["stay-overlaps see stay 1"]);
  });
});
