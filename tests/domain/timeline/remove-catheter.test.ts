import { describe, expect, it } from "vitest";
import { removeCatheter } from "../../../src/domain/timeline/remove-catheter.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

describe("a removal", () => {
  it("at an instant", () => {
    const after = removeCatheter(timelineOf("stay 1: 10-", "catheter 4: 12- seen 18"), { catheterId: 4, at: 18 });
    expect(linesOf(after)[1]).toBe("catheter 4: 12-18 seen 18 v2");
  });

  it("known only to lie between two instants", () => {
    const before = timelineOf("stay 1: 10-", "catheter 4: 12- seen 18");
    const after = removeCatheter(before, { catheterId: 4, after: 18, before: 22 });
    expect(linesOf(after)[1]).toBe("catheter 4: 12-18..22 seen 18 v2");
  });

  it.each([
    { title: "twice", line: "catheter 4: 12-18", refused: ["already-removed see catheter 4"] },
    { title: "after it was found gone", line: "catheter 4: 12-16..18", refused: ["already-removed see catheter 4"] },
    { title: "before it was put in", line: "catheter 4: 21-", refused: ["removal-before-insertion"] },
    { title: "before it was last seen", line: "catheter 4: 12- seen 21", refused: ["seen-after-removal"] },
    { title: "of an unknown catheter", line: "catheter 5: 12-", refused: ["not-found"] },
  ])("is refused $title", ({ line, refused }) => {
    const timeline = timelineOf("stay 1: 10-", line);
    expect(refusals(() => removeCatheter(timeline, { catheterId: 4, at: 20 }))).toEqual(refused);
  });

  it("is refused when its two instants are in the wrong order", () => {
    const timeline = timelineOf("stay 1: 10-", "catheter 4: 12-");
    const act = () => removeCatheter(timeline, { catheterId: 4, after: 22, before: 20 });
    expect(refusals(act)).toEqual(["end-before-start"]);
  });
});
