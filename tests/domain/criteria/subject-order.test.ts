import { expect, it } from "vitest";
import { bySubject } from "../../../src/domain/criteria/index.ts";

it("subjects stand in the order of days, specimens of a day before findings, each by number", () => {
  const ordered = [
    { kind: "finding", id: 9, day: 1 },
    { kind: "specimen", id: 2, day: 2 },
    { kind: "specimen", id: 8, day: 2 },
    { kind: "finding", id: 1, day: 2 },
    { kind: "finding", id: 3, day: 2 },
    { kind: "specimen", id: 1, day: 3 },
  ] as const;
  expect(ordered.toReversed().sort(bySubject)).toEqual(ordered);
  expect(ordered.toSorted(bySubject)).toEqual(ordered);
});
