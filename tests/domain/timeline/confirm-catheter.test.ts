import { describe, expect, it } from "vitest";
import { confirmCatheter } from "../../../src/domain/timeline/confirm-catheter.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

const seen = (seenAt: number) => ({ catheterId: 4, seenAt });

describe("a catheter seen in place", () => {
  it("keeps the latest such instant", () => {
    const once = confirmCatheter(timelineOf("stay 1: 10-", "catheter 4: 12-"), seen(20));
    expect(linesOf(once)[1]).toBe("catheter 4: 12- seen 20 v2");
    expect(linesOf(confirmCatheter(once, seen(30)))[1]).toBe("catheter 4: 12- seen 30 v3");
  });

  it("changes nothing when it was seen later already", () => {
    const before = timelineOf("stay 1: 10-", "catheter 4: 12- seen 20");
    expect(confirmCatheter(before, seen(20))).toBe(before);
    expect(confirmCatheter(before, seen(15))).toBe(before);
  });

  it.each([
    { title: "after its removal", line: "catheter 4: 12-18", at: 19, refused: ["seen-after-removal"] },
    { title: "after it was found gone", line: "catheter 4: 12-16..18", at: 19, refused: ["seen-after-removal"] },
    { title: "before it was put in", line: "catheter 4: 12- seen 20", at: 11, refused: ["seen-before-insertion"] },
    { title: "although it is unknown", line: "catheter 5: 12-", at: 20, refused: ["not-found"] },
  ])("is refused $title", ({ line, at, refused }) => {
    expect(refusals(() => confirmCatheter(timelineOf("stay 1: 10-", line), seen(at)))).toEqual(refused);
  });
});
