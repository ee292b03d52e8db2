import { describe, expect, it } from "vitest";
import { insertCatheter } from "../../../src/domain/timeline/insert-catheter.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

const urethral = { stayId: 1, catheterId: 9, kind: "indwelling-urethral", inPlaceOnArrival: false } as const;

describe("a catheter put in", () => {
  it("is added, with nothing said that nobody said", () => {
    const after = insertCatheter(timelineOf("stay 1: 10-", "catheter 4: 12-"), { ...urethral, insertedAt: 20 });
    expect(linesOf(after)).toEqual(["stay 1: 10-", "catheter 4: 12-", "catheter 9: 20-"]);
    const unsaid = { number: null, indication: null, sizeFr: null, balloonMl: null, lastSeenAt: null };
    expect(after.stays[0]?.catheters[1]).toMatchObject({ ...unsaid, version: 1, voidReason: null, marks: [] });
  });

  it("keeps all that was said", () => {
    const said = { number: "C-1", sizeFr: 14, balloonMl: 10, indication: "retention", lastSeenAt: 25 };
    const insertion = { ...urethral, ...said, insertedAt: 20, removedAfterAt: 26, removedBeforeAt: 28 };
    const after = insertCatheter(timelineOf("stay 1: 10-"), insertion);
    expect(linesOf(after)).toContain("catheter 9: 20-26..28 seen 25");
    expect(after.stays[0]?.catheters[0]).toMatchObject(said);
  });

  it("may have been in place on arrival, since nobody knows when", () => {
    const insertion = { ...urethral, insertedAt: null, inPlaceOnArrival: true };
    expect(linesOf(insertCatheter(timelineOf("stay 1: 10-"), insertion))[1]).toBe("catheter 9: arrived ?-");
  });

  it.each([
    { title: "at no known time", insertion: { insertedAt: null }, refused: ["insertion-unknown"] },
    { title: "before the admission", insertion: { insertedAt: 9 }, refused: ["outside-stay see stay 1"] },
    { title: "after the discharge", insertion: { insertedAt: 51 }, refused: ["outside-stay see stay 1"] },
    { title: "after its removal", insertion: { insertedAt: 20, removedAt: 19 }, refused: ["removal-before-insertion"] },
    { title: "in an unknown stay", insertion: { insertedAt: 20, stayId: 7 }, refused: ["not-found"] },
  ])("is refused $title", ({ insertion, refused }) => {
    const act = () => insertCatheter(timelineOf("stay 1: 10-50"), { ...urethral, ...insertion });
    expect(refusals(act)).toEqual(refused);
  });
});
