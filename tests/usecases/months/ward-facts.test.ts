import { expect, it } from "vitest";
import type { WardSetting } from "../../../shared/vocabulary.ts";
import type { WardRow } from "../../../src/store/wards.ts";
import { wardFacts } from "../../../src/usecases/months/ward-facts.ts";

const days = { first: 100, last: 130 };

/** A ward that is described from these days on. */
function ward(settings: readonly (readonly [number, WardSetting | null])[]): WardRow {
  const described = settings.map(([fromDay, setting], i) => ({
    ...{ id: i + 1, fromDay, name: `From ${fromDay}`, type: null, setting, beds: null, byHand: true, version: 1 },
  }));
  return {
    ...{ id: 7, code: "A", openedDay: null, closedDay: null, namedOnly: false, version: 1 },
    settings: described,
  };
}

const facts = (one: WardRow, hadPatientsBefore = false) => wardFacts(one, { days, hadPatientsBefore }, []);

it.each<[string, WardRow, boolean, string]>([
  ["yes on all of its days", ward([[0, "inpatient"]]), false, "yes"],
  ["partly from the day on which it opened", ward([[110, "inpatient"]]), false, "partly"],
  ["none where it is of another setting", ward([[0, "outpatient"]]), false, "none"],
  ["unknown where its setting is not recorded", ward([[0, null]]), false, "unknown"],
  ["unknown where it was never described", ward([]), false, "unknown"],
  ["none before it opened", ward([[131, "inpatient"]]), false, "none"],
  ["unknown before it is described, where it had patients", ward([[131, "inpatient"]]), true, "unknown"],
  ["none where it is of another setting and had patients before", ward([[110, "outpatient"]]), true, "none"],
])("a ward is an inpatient ward: %s", (_, one, hadPatientsBefore, inpatient) => {
  expect(facts(one, hadPatientsBefore).inpatient).toBe(inpatient);
});

it("has its days in order with their sums, and the name of its last day", () => {
  const one = ward([
    [0, "inpatient"],
    [120, "inpatient"],
  ]);
  const sums = [
    { wardId: 7, day: 103, patientDays: 2, catheterDays: 1 },
    { wardId: 7, day: 101, patientDays: 3, catheterDays: 0 },
  ];
  expect(wardFacts(one, { days, hadPatientsBefore: false }, sums)).toMatchObject({
    ...{ wardId: 7, code: "A", name: "From 120", patientDays: 5, catheterDays: 1 },
    days: [{ day: 101 }, { day: 103 }],
  });
});
