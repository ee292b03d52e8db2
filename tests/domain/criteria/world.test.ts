import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const story = {
  ageYears: 0,
  lookedFor: false,
  wards: [[1, 3, 6]],
  urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }],
  signs: [{ day: 13, sign: "dysuria" }],
} as const;
const outcomeOf = (catheters: readonly (readonly [number | null, number | null])[]) =>
  determine(timelineOf({ ...story, catheters }), us2024)[0]?.outcome;

// Found by the second implementation, seed 932352. A story's catheters are put in at 9 and taken out at 12 o'clock.
it("a catheter put in before another is out leaves no hour without one, whatever ended long before", () => {
  const exchanged = [
    [null, 13],
    [13, null],
  ] as const;
  expect(outcomeOf(exchanged)).toBe("not-met");
  expect(outcomeOf([...exchanged, [null, 3]])).toBe("not-met");
  // With an hour between them nobody can tell on which side an undated sign lies.
  expect(outcomeOf([[null, 13]])).toBe("cannot-tell");
});
