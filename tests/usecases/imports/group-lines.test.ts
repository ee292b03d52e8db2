import { describe, expect, it } from "vitest";
import { type IntakeLine, type IntakeValues, specimenKey } from "../../../src/domain/intake/intake-line.ts";
import { entryKey } from "../../../src/usecases/imports/entry-key.ts";
import { type KnownPatients, LineGroups } from "../../../src/usecases/imports/group-lines.ts";
import { catheter, hour, move, review, sign, specimen, stay } from "../../domain/intake/lines.ts";

const values = { ward: "A", day: 20_000, patients: 1, catheters: 0 };
const ward = { file: "wards.csv", line: 2, values, marks: [], raw: "" } as unknown as IntakeLine;
const count = { file: "daily-counts.csv", line: 2, values, marks: [], raw: "" } as unknown as IntakeLine;
const nobody: KnownPatients = { ownerOf: () => undefined, staysOf: () => [], survivorOf: (identifier) => identifier };

type Specimen = IntakeValues["specimens.csv"];
const unplaced = (number: string | null) =>
  ({ ...review(2, {}), values: { ...review(2, {}).values, stay: null, catheter: number } }) as IntakeLine;

function place(groups: LineGroups, line: IntakeLine, known = nobody, fingerprint = "same") {
  return groups.place({ line, entryKey: entryKey(line), fingerprint }, known);
}

describe("groups of lines", () => {
  it("hold everything about one patient, whatever file it stands in, and everything about one ward", () => {
    const groups = new LineGroups();
    const lines = [ward, stay(2, {}), move(2, {}), catheter(2, {}), count];
    expect(lines.map((line) => place(groups, line).key)).toEqual(["1 A", "2 P1", "2 P1", "2 P1", "3 A"]);
  });

  it("are worked on wards first, then patients, then counts, in the order of their keys", () => {
    const groups = new LineGroups();
    const keys = [count, catheter(2, { stay: "S9" }), stay(2, {}), ward].map((line) => place(groups, line).key);
    expect(keys.toSorted()).toEqual(["1 A", "2 P1", "2s S9", "3 A"]);
  });

  it("find the patient of a catheter in the lines before it, or in what is recorded", () => {
    const groups = new LineGroups();
    place(groups, move(2, { stay: "S1", patient: "P1" }));
    const lines = [
      catheter(2, { stay: "S1" }),
      catheter(3, { stay: "S2" }),
      catheter(4, { stay: "S2" }),
      catheter(5, { stay: "S3" }),
    ];
    expect(groups.unknownStays([...lines, ward, review(6, { stay: "S5" })], ["S1", "S2", "S4"])).toEqual([
      ...["S2", "S3", "S5", "S4"],
    ]);
    const known = { ...nobody, ownerOf: (number: string) => (number === "S2" ? "P7" : undefined) };
    expect(lines.map((line) => place(groups, line, known).key)).toEqual(["2 P1", "2 P7", "2 P7", "2s S3"]);
  });

  it("find the stay of a review by its catheter, in the lines before it and in what is recorded", () => {
    const groups = new LineGroups();
    place(groups, move(2, { stay: "S1", patient: "P1" }));
    for (const [i, stay] of ["S1", "S1", "S2"].entries()) place(groups, catheter(2 + i, { stay, catheter: `C${i}` }));
    const staysOf = (number: string) => ({ C1: ["S1"], C2: ["S3"], C4: ["S4"] })[number] ?? [];
    const known = { ...nobody, staysOf, ownerOf: (number: string) => (number === "S4" ? "P4" : undefined) };
    const of = (number: string | null) => place(groups, unplaced(number), known);
    for (const number of ["C0", "C1"])
      expect(of(number)).toMatchObject({ key: "2 P1", line: { values: { stay: "S1" } } });
    expect(of("C4")).toMatchObject({ key: "2 P4", fault: null, line: { values: { stay: "S4" } } });
    expect(of("C2").fault).toMatchObject({ code: "catheter-unclear", column: "catheter" });
    expect(of("C9").fault).toMatchObject({ code: "catheter-unknown", column: "catheter" });
    expect(of(null).fault).toMatchObject({ code: "csv-cell-empty", column: "catheter" });
  });

  it("hold the lines of merged records together, under the record that survived", () => {
    const groups = new LineGroups();
    const known = { ...nobody, survivorOf: (identifier: string) => (identifier === "A0" ? "Z9" : identifier) };
    const lines = [
      move(2, { stay: "S1", patient: "A0" }),
      move(3, { stay: "S2", patient: "Z9" }),
      catheter(2, { stay: "S1" }),
    ];
    expect(lines.map((line) => place(groups, line, known).key)).toEqual(["2 Z9", "2 Z9", "2 Z9"]);
  });

  it("refuse a stay that was another patient's in a line before, which is named", () => {
    const groups = new LineGroups();
    expect(place(groups, stay(4, { patient: "P1" })).fault).toBe(null);
    expect(place(groups, move(2, { patient: "P1" })).fault).toBe(null);
    expect(place(groups, move(3, { patient: "P2" }))).toMatchObject({
      key: "2 P2",
      fault: { code: "stay-of-another-patient", column: "patient", other: "stays.csv line 4" },
    });
    // The first line stays the one that counts.
    expect(place(groups, catheter(2, {})).key).toBe("2 P1");
  });

  it("refuse what is said of a stay whose own line could not be read", () => {
    const groups = new LineGroups();
    groups.refuseStay("S1", "stays.csv line 9");
    const fault = { code: "stay-refused", other: "stays.csv line 9" };
    expect(place(groups, move(2, { stay: "S1" })).fault).toMatchObject(fault);
    expect(place(groups, catheter(2, { stay: "S1" })).fault).toMatchObject(fault);
    expect(place(groups, move(3, { stay: "S2" })).fault).toBe(null);
  });

  it("refuse the lines of a specimen one of which could not be read", () => {
    const groups = new LineGroups();
    place(groups, move(2, {}));
    groups.refuseSpecimen(specimenKey(specimen(2, { specimen: "U1" }).values as Specimen), "specimens.csv line 2");
    expect(place(groups, specimen(3, { specimen: "U1", collected: hour(9) }))).toMatchObject({
      key: "2 P1",
      fault: { code: "specimen-refused", other: "specimens.csv line 2" },
    });
    for (const line of [specimen(4, { specimen: "U2" }), specimen(5, {}), sign(2, {})])
      expect(place(groups, line)).toMatchObject({ key: "2 P1", fault: null });
  });

  it("refuse the second of two lines that say different things of one ward, or of one counted day", () => {
    const groups = new LineGroups();
    for (const line of [ward, count]) {
      expect(place(groups, line, nobody, "first").fault).toBe(null);
      expect(place(groups, { ...line, line: 3 }, nobody, "first").fault).toBe(null);
      expect(place(groups, { ...line, line: 4 }, nobody, "other").fault).toMatchObject({
        code: "line-contradicts",
        other: `${line.file} line 2`,
      });
    }
  });
});
