import { describe, expect, it } from "vitest";
import type { IntakeLine } from "../../../src/domain/intake/intake-line.ts";
import { groupsOf } from "../../../src/usecases/intake/group-lines.ts";
import { catheter, move, stay } from "../../domain/intake/lines.ts";

const ward = { file: "wards.csv", line: 2, values: { ward: "A" }, marks: [], raw: "" } as unknown as IntakeLine;
const count = { file: "daily-counts.csv", line: 2, values: { ward: "A" }, marks: [], raw: "" } as unknown as IntakeLine;
const nobody = () => undefined;

describe("groups of lines", () => {
  it("hold everything about one patient, whatever file it stands in, and everything about one ward", () => {
    const { keyOf } = groupsOf();
    const lines = [ward, stay(2, {}), move(2, {}), catheter(2, {}), count];
    expect(lines.map((line) => keyOf(line, nobody).key)).toEqual(["1 A", "2 P1", "2 P1", "2 P1", "3 A"]);
  });

  it("are worked on wards first, then patients, then counts, in the order of their keys", () => {
    const { keyOf } = groupsOf();
    const keys = [count, catheter(2, { stay: "S9" }), stay(2, {}), ward].map((line) => keyOf(line, nobody).key);
    expect(keys.toSorted()).toEqual(["1 A", "2 P1", "2s S9", "3 A"]);
  });

  it("find the patient of a catheter in the lines before it, or in what is recorded", () => {
    const { keyOf, unknownStays } = groupsOf();
    keyOf(move(2, { stay: "S1", patient: "P1" }), nobody);
    const lines = [
      catheter(2, { stay: "S1" }),
      catheter(3, { stay: "S2" }),
      catheter(4, { stay: "S2" }),
      catheter(5, { stay: "S3" }),
      ward,
    ];
    expect(unknownStays(lines)).toEqual(["S2", "S3"]);
    const ownerOf = (number: string) => (number === "S2" ? "P7" : undefined);
    expect(lines.slice(0, 4).map((line) => keyOf(line, ownerOf).key)).toEqual(["2 P1", "2 P7", "2 P7", "2s S3"]);
  });

  it("refuse a stay that was another patient's in a line before, which is named", () => {
    const { keyOf } = groupsOf();
    expect(keyOf(stay(4, { patient: "P1" }), nobody).fault).toBe(null);
    expect(keyOf(move(2, { patient: "P1" }), nobody).fault).toBe(null);
    expect(keyOf(move(3, { patient: "P2" }), nobody)).toMatchObject({
      key: "2 P2",
      fault: { code: "stay-of-another-patient", column: "patient", other: "stays.csv line 4" },
    });
    // The first line stays the one that counts.
    expect(keyOf(catheter(2, {}), nobody).key).toBe("2 P1");
  });
});
