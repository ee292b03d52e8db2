import { describe, expect, it } from "vitest";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import { correctNote, type NoteChanges, placeFaults, wardAt } from "../../../src/domain/timeline/write-note.ts";
import { noteOf, placeOf } from "./notes-written.ts";
import { refusals } from "./refusals.ts";
import { stayFromLines, wardIds } from "./written.ts";

describe("a new note", () => {
  it("holds when it happened and when it was written down, and nothing that nobody said", () => {
    expect(noteOf({ kind: "confirmation", at: 12 })).toEqual({
      ...{ id: 9, version: 1, voidReason: null, marks: [], catheterId: 4, kind: "confirmation" },
      ...{ at: 12, writtenAt: 40, writtenBy: 7 },
      ...{ outcome: null, indication: null, items: null, amountMl: null, remark: null },
    });
  });

  it("holds what was said, with the mark of a doubtful time", () => {
    const said = { outcome: "keep", indication: "perioperative", remark: "Until Friday" } as const;
    const note = noteOf({ kind: "review", at: 12, ...said, marks: ["repeated-hour:at"] });
    expect(note).toMatchObject({ ...said, marks: ["repeated-hour:at"], items: null, amountMl: null });
  });
});

describe("a correction of a note", () => {
  const review = noteOf({ kind: "review", at: 12, outcome: "keep", indication: "perioperative" });

  it("changes what it names, one version on, and leaves when and by whom it was written", () => {
    const corrected = correctNote(review, { at: 13, outcome: "remove", indication: null });
    expect(corrected).toEqual({ ...review, at: 13, outcome: "remove", indication: null, version: 2 });
  });

  it.each<[Parameters<typeof noteOf>[0]["kind"], NoteChanges, string[]]>([
    ["review", { at: 1, outcome: "ask", indication: null, remark: null }, []],
    ["review", { items: {} }, ["/items"]],
    ["review", { amountMl: 1 }, ["/amountMl"]],
    ["confirmation", { at: 1 }, []],
    ["confirmation", { remark: "Seen" }, ["/remark"]],
    ["confirmation", { outcome: "ask" }, ["/outcome"]],
    ["care-check", { items: { secured: "kept" }, remark: "New tape" }, []],
    ["care-check", { indication: "perioperative" }, ["/indication"]],
    ["urine-output", { at: 1, amountMl: 300 }, []],
    ["urine-output", { remark: "Dark" }, ["/remark"]],
  ])("of a %s to %j has fields of its kind alone", (kind, changes, pointers) => {
    const codes = refusals(() => correctNote(noteOf({ kind, at: 12 }), changes));
    expect(codes).toEqual(pointers.map(() => "field-of-another-note"));
  });

  it("names each field that the note does not have", () => {
    const wrong = () => correctNote(noteOf({ kind: "confirmation", at: 12 }), { remark: "Seen", amountMl: 1 });
    expect(refusals(wrong)).toEqual(["field-of-another-note", "field-of-another-note"]);
  });

  it("of its time leaves no doubt about the one before, and may have one of its own", () => {
    const marks = ["repeated-hour:at"] as const;
    const doubtful = { ...review, marks };
    expect(correctNote(doubtful, { at: 13 }).marks).toEqual([]);
    expect(correctNote(review, { at: 13 }, marks).marks).toEqual(marks);
    expect(correctNote(doubtful, { remark: "Asked twice" }).marks).toEqual(marks);
  });
});

describe("the place of a note", () => {
  const zone = zoneNamed("UTC");
  const hour = 3_600_000;
  const faults = (at: number, catheter: string, stay = "stay 1: 10-") => {
    const written = stayFromLines(stay, catheter);
    const [one] = written.catheters;
    if (!one) throw new Error("the line wrote no catheter");
    return placeFaults(written, one, { at }, zone);
  };

  it.each([
    ["catheter 4: 12-18", 12],
    ["catheter 4: 12-18", 18],
    ["catheter 4: 12-", 1_000],
    ["catheter 4: 12-18..20", 18],
    // In place on arrival: from the beginning of the stay.
    ["catheter 4: arrived ?-", 10],
    ["catheter 4: arrived 3-11", 10],
  ])("is while the catheter is in: %s at %i", (catheter, at) => {
    expect(faults(at, catheter)).toEqual([]);
  });

  it.each([
    ["catheter 4: 12-18", 11],
    ["catheter 4: 12-18", 19],
    ["catheter 4: 12-18..20", 19],
    ["catheter 4: arrived 3-", 9],
  ])("is not when it is out: %s at %i", (catheter, at) => {
    expect(faults(at, catheter).map((fault) => [placeOf(fault), fault.other])).toEqual([
      ["not-in-place /at", "catheter 4"],
    ]);
  });

  it("is not after the discharge, nor for a catheter that never was in during the stay", () => {
    expect(faults(31, "catheter 4: 12-", "stay 1: 10-30").map(placeOf)).toEqual(["not-in-place /at"]);
    const [never] = faults(10, "catheter 4: arrived 3-9");
    expect(never?.detail).toBe("The catheter was not in place at that time.");
  });

  it("tells from when or until when it was in, in local time", () => {
    const [stay, catheter] = [`stay 1: ${10 * hour}-`, `catheter 4: ${12 * hour}-${18 * hour}`];
    const details = [11, 19].map((at) => faults(at * hour, catheter, stay)[0]?.detail);
    expect(details).toEqual([
      "The catheter was not in place at that time. It was in place from 1970-01-01T12:00.",
      "The catheter was not in place at that time. It was in place until 1970-01-01T18:00.",
    ]);
  });
});

it.each([
  [9, null],
  [10, wardIds.A],
  [20, wardIds.B],
  // Away for a procedure or on leave: the ward that the patient left.
  [35, wardIds.B],
  [50, wardIds.C],
  // What is written at the very discharge is written by the last ward.
  [60, wardIds.C],
  [61, null],
])("the ward at %i", (at, ward) => {
  const stay = stayFromLines(
    ...["stay 1: 10-60", "ward stay 2: A 10-20", "ward stay 3: B 20-30 then procedure", "ward stay 5: C 40-60"],
  );
  expect(wardAt(stay, at)).toBe(ward);
});
