import { describe, expect, it } from "vitest";
import type { IntakeLine } from "../../../src/domain/intake/intake-line.ts";
import { entryKey } from "../../../src/usecases/imports/entry-key.ts";
import { catheter, hour, move, review, sign, specimen, stay } from "../../domain/intake/lines.ts";

const ward = (values: object) => ({ file: "wards.csv", line: 2, marks: [], raw: "", values }) as unknown as IntakeLine;
const count = (values: object) =>
  ({ file: "daily-counts.csv", line: 2, marks: [], raw: "", values }) as unknown as IntakeLine;

describe("what a line is about", () => {
  it.each([
    ["a ward", ward({ ward: "A", name: "One" }), ward({ ward: "A", name: "Two" })],
    ["a stay", stay(2, { admitted: hour(1) }), stay(9, { admitted: hour(2), discharged: hour(5) })],
    ["a move", move(2, { from: hour(1) }), move(9, { from: hour(1), to: hour(4), bed: "3" })],
    ["a catheter with a number", catheter(2, { catheter: "C1" }), catheter(9, { catheter: "C1", inserted: hour(2) })],
    [
      "a catheter by its insertion",
      catheter(2, { inserted: hour(1) }),
      catheter(9, { inserted: hour(1), removed: hour(4) }),
    ],
    ["an answer of a review", review(2, { outcome: "keep" }), review(9, { outcome: "remove", note: "x" })],
    [
      "an organism of one report",
      specimen(2, { specimen: "U1", organism: "E. coli" }),
      specimen(9, { specimen: "U1", organism: "E. COLI", collected: hour(2), count: "10^5" }),
    ],
    ["a sign at a time", sign(2, { time: "09:00" }), sign(9, { time: "09:00", present: "absent" })],
    ["a count", count({ ward: "A", day: 20_000, patients: 1 }), count({ ward: "A", day: 20_000, patients: 2 })],
  ])("is the same for two lines about %s, whatever they say of it", (_, one, other) => {
    expect(entryKey(one)).toBe(entryKey(other));
  });

  it("is another for each other thing, and for the same words in another file", () => {
    const lines: IntakeLine[] = [
      ward({ ward: "S1" }),
      stay(2, {}),
      stay(2, { stay: "S2" }),
      ...[move(2, {}), move(2, { ward: "B" }), move(2, { from: hour(1) }), move(2, { stay: "S2" })],
      ...[catheter(2, {}), catheter(2, { catheter: "C1" }), catheter(2, { catheter: "C2" })],
      ...[catheter(2, { kind: "suprapubic" }), catheter(2, { inserted: hour(1) })],
      ...[review(2, {}), review(2, { day: hour(1) }), review(2, { stay: "S2" }), review(2, { catheter: "C1" })],
      review(2, { outcome: "ask" }),
      ...[specimen(2, {}), specimen(2, { kind: "blood" }), specimen(2, { collected: hour(1) })],
      ...[specimen(2, { specimen: "U1" }), specimen(2, { organism: "E. coli" }), specimen(2, { status: "corrected" })],
      ...[sign(2, {}), sign(2, { day: 1 }), sign(2, { time: "09:00" }), sign(2, { sign: "dysuria" })],
      ...[count({ ward: "A", day: 20_000 }), count({ ward: "A", day: 20_001 }), count({ ward: "B", day: 20_000 })],
    ];
    const keys = lines.map(entryKey);
    expect(new Set(keys).size).toBe(lines.length);
    // 132 bits in an alphabet of 64 letters.
    expect(keys.every((key) => /^[\w-]{22}$/.test(key))).toBe(true);
  });
});
