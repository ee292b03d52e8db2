import { expect, it } from "vitest";
import { gapSentence } from "../../../src/domain/reports/gap-sentence.ts";
import { type HeldImport, type HeldLine, heldGaps, rejectedLines } from "../../../src/domain/reports/line-gaps.ts";

const october = { first: 20_000, last: 20_030 };

function held(file: string, more: Partial<HeldLine> = {}): HeldLine {
  const plain = { importId: 7, line: 2, state: "refused", wards: ["A"], dated: true } as const;
  return { ...plain, file, reason: null, by: null, at: null, ...more };
}

function waiting(importId: number, more: Partial<HeldImport> = {}): HeldImport {
  return { importId, state: "waiting", isBroken: false, days: october, ...more };
}

it("lines make one gap a kind, with the units that they touch and what cannot be read", () => {
  const lines = [
    held("moves.csv", { wards: ["B", "A"] }),
    held("moves.csv", { line: 3, wards: null, dated: false }),
    held("catheters.csv", { state: "dropped", reason: "Twice" }),
    held("signs.csv", { state: "marked" }),
  ];
  const gaps = heldGaps({ lines, imports: [] }, october);
  expect(gaps.map((gap) => [gap.kind, gap.count])).toEqual([
    ["rejected-moves", 2],
    ["dropped-lines", 1],
    ["marked-lines", 1],
  ]);
  expect(gaps.map(gapSentence)[0]).toBe(
    "2 lines of moves are rejected and held for repair, so patient-days can be missing. Units: A, B. Unit not readable: 1. Month not readable: 1.",
  );
});

it("imports that are not stored are a gap of the days that their lines name, a broken file before a wait", () => {
  const imports = [
    waiting(1),
    waiting(2, { days: { first: 20_031, last: 20_040 } }),
    waiting(3, { days: null }),
    waiting(4, { isBroken: true }),
    waiting(5, { state: "refused" }),
  ];
  const gaps = heldGaps({ lines: [], imports }, october);
  expect(gaps.map(({ kind, held: of }) => [kind, of?.imports])).toEqual([
    ["import-waiting", [1, 3]],
    ["import-broken", [4]],
    ["import-refused", [5]],
  ]);
});

it("rejected lines of a unit are those that touch it, or of which no unit can be read", () => {
  const lines = [held("catheters.csv"), held("catheters.csv", { wards: null }), held("moves.csv")];
  expect(rejectedLines(lines, "catheters.csv", "A")).toHaveLength(2);
  expect(rejectedLines(lines, "catheters.csv", "B")).toHaveLength(1);
  expect(rejectedLines([held("catheters.csv", { state: "dropped" })], "catheters.csv")).toEqual([]);
});
