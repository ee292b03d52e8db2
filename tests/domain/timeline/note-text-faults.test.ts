import { describe, expect, it } from "vitest";
import { indications } from "../../../shared/catheter-words.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { indicationFaults, noteTextFaults } from "../../../src/domain/timeline/note-text-faults.ts";
import { noteOf, placeOf } from "./notes-written.ts";

const own = { code: "spinal-unit", label: "Protocol of the spinal unit", source: "Agreed with the unit" };
const policy = { ...defaultPolicy, indications: [...defaultPolicy.indications, own] };

const faultsOf = (text: Parameters<typeof noteOf>[0]) => noteTextFaults(noteOf(text), policy).map(placeOf);

describe("a review", () => {
  it.each([
    ["keeps with a reason", { outcome: "keep", indication: "perioperative" }, []],
    ["keeps with a reason of the unit", { outcome: "keep", indication: "spinal-unit" }, []],
    ["keeps with a reason that is recorded and not accepted", { outcome: "keep", indication: "incontinence" }, []],
    ["keeps without one", { outcome: "keep" }, ["indication-missing /indication"]],
    ["keeps with one that nobody knows", { outcome: "keep", indication: "habit" }, ["indication-unknown /indication"]],
    ["asks", { outcome: "ask" }, []],
    ["removes", { outcome: "remove" }, []],
    ["asks with a reason", { outcome: "ask", indication: "perioperative" }, ["field-unreadable /indication"]],
    ["removes with a reason", { outcome: "remove", indication: "perioperative" }, ["field-unreadable /indication"]],
    [
      "removes with one that nobody knows",
      { outcome: "remove", indication: "habit" },
      ["field-unreadable /indication", "indication-unknown /indication"],
    ],
  ] as const)("%s", (_what, said, faults) => {
    expect(faultsOf({ kind: "review", at: 12, ...said })).toEqual(faults);
  });
});

describe("a care check", () => {
  it("names items of the bundle, and every other one is a fault", () => {
    const items = { secured: "kept", "bag-position": "broken", ironing: "kept", dusting: "not-applicable" } as const;
    expect(faultsOf({ kind: "care-check", at: 12, items })).toEqual([
      "item-unknown /items/ironing",
      "item-unknown /items/dusting",
    ]);
    expect(faultsOf({ kind: "care-check", at: 12, items: {} })).toEqual([]);
  });

  it("does not take the names that every object has for items", () => {
    expect(faultsOf({ kind: "care-check", at: 12, items: { constructor: "kept" } as never })).toEqual([
      "item-unknown /items/constructor",
    ]);
  });
});

it.each(["confirmation", "urine-output"] as const)("a %s needs no reason", (kind) => {
  expect(faultsOf({ kind, at: 12 })).toEqual([]);
});

describe("an indication", () => {
  it.each([...Object.keys(indications), own.code, null, undefined])("%s can be recorded", (code) => {
    expect(indicationFaults("/x", code, policy)).toEqual([]);
  });

  it.each(["habit", "", "toString", "constructor"])("%j is not known", (code) => {
    expect(indicationFaults("/x", code, policy).map(placeOf)).toEqual(["indication-unknown /x"]);
  });

  it("of a unit is known by that unit alone", () => {
    expect(indicationFaults("/x", own.code, defaultPolicy)).toHaveLength(1);
  });
});
