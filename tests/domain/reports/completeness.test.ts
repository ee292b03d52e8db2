import { expect, it } from "vitest";
import { completenessOf, completenessWithin, signedItems } from "../../../src/domain/reports/completeness.ts";
import type { HeldLine } from "../../../src/domain/reports/line-gaps.ts";

const line = (number: number, wards: readonly string[] | null): HeldLine => ({
  ...{ importId: 7, file: "moves.csv", line: number, state: "refused", wards, dated: true },
  ...{ reason: null, by: null, at: Date.UTC(2026, 10, 2) },
});
const lines = [line(2, ["A"]), line(3, ["B"]), line(4, null)];
const items = completenessOf(
  [
    { kind: "no-patient", wardId: 1, count: 2, days: [] },
    { kind: "rejected-moves", wardId: null, count: 3, days: [], held: { lines, wards: ["A", "B"], imports: [] } },
    { kind: "import-waiting", wardId: null, count: 1, days: [], held: { lines: [], wards: [], imports: [9] } },
  ],
  [{ wardId: 1, code: "A" }],
);

it("is what the gaps are, with the ward by its code and each line without what it says", () => {
  expect(items.map(({ kind, ward, count }) => [kind, ward, count])).toEqual([
    ["no-patient", "A", 2],
    ["rejected-moves", null, 3],
    ["import-waiting", null, 1],
  ]);
  expect(items[1]?.lines[0]).toEqual({
    ...{ importId: 7, file: "moves.csv", line: 2, wards: ["A"], dated: true },
    ...{ reason: null, by: null, at: "2026-11-02T00:00:00.000Z" },
  });
});

it("is within some wards what touches them or may touch them, counted and said again", () => {
  const within = completenessWithin(items, { own: new Set(["B"]), known: new Set(["A", "B"]) });
  expect(within.map(({ kind, count }) => [kind, count])).toEqual([
    ["rejected-moves", 2],
    ["import-waiting", 1],
  ]);
  expect(within[0]?.sentence).toContain("2 lines of moves are rejected");
  expect(within[0]?.sentence).toContain("Unit: B. Unit not readable: 1.");
});

it("is signed for as far as no figure shows it", () => {
  expect(signedItems(items)?.map(({ kind }) => kind)).toEqual(["rejected-moves"]);
  expect(signedItems(null)).toBeNull();
});
