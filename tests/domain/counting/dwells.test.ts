import { expect, it } from "vitest";
import { dwellsOf } from "../../../src/domain/counting/dwells.ts";
import { stayFromLines, wardIds } from "../timeline/written.ts";

// Instants of the lines are days here, and ward C is no inpatient ward.
const rules = {
  zone: { dayOf: (at: number) => Math.floor(at) },
  isInpatient: (wardId: number) => wardId !== wardIds.C,
};
const dwells = (now: number, ...lines: string[]) => dwellsOf(stayFromLines(...lines), rules, now);

it("a catheter belongs to the ward on which it was put in, its days counting from 1", () => {
  expect(dwells(99, "stay 1: 10-40", "ward stay 2: A 10-20", "ward stay 3: B 20-40", "catheter 4: 22-25")).toEqual([
    { wardId: wardIds.B, insertedOn: 22, days: 4, end: "removed" },
  ]);
});

it("one put in before an inpatient ward belongs to the first one the patient came to; without one it is left out", () => {
  const moved = ["stay 1: 10-40", "ward stay 2: C 10-20", "ward stay 3: A 20-40", "catheter 4: 12-22"];
  expect(dwells(99, ...moved)).toEqual([{ wardId: wardIds.A, insertedOn: 12, days: 11, end: "removed" }]);
  expect(dwells(99, "stay 1: 10-20", "ward stay 2: C 10-20", "catheter 4: 12-14")).toEqual([]);
});

it("an exchange ends nothing; one full day without a catheter does", () => {
  const stay = ["stay 1: 10-40", "ward stay 2: A 10-40"];
  expect(dwells(99, ...stay, "catheter 3: 12-15", "catheter 4: 16-20", "catheter 5: 22-23")).toEqual([
    { wardId: wardIds.A, insertedOn: 12, days: 9, end: "removed" },
    { wardId: wardIds.A, insertedOn: 22, days: 2, end: "removed" },
  ]);
});

it("discharge, death and time that has not passed end only the watching", () => {
  const stay = ["ward stay 2: A 10-20", "catheter 3: 12-"];
  expect(dwells(99, "stay 1: 10-20", ...stay)).toMatchObject([{ days: 9, end: "discharged" }]);
  const died = { ...stayFromLines("stay 1: 10-20", ...stay), disposition: "Died on the ward" };
  expect(dwellsOf(died, rules, 99)).toMatchObject([{ days: 9, end: "died" }]);
  expect(dwells(15, "stay 1: 10-", "ward stay 2: A 10-", "catheter 3: 12-")).toMatchObject([
    { days: 4, end: "in-place" },
  ]);
  // What came later than the last instant that is looked at is not known yet.
  expect(dwells(15, "stay 1: 10-20", ...stay)).toMatchObject([{ days: 4, end: "in-place" }]);
  expect(dwells(15, "stay 1: 10-20", "ward stay 2: A 10-20", "catheter 3: 12-17")).toMatchObject([
    { days: 4, end: "in-place" },
  ]);
});

it("an unknown insertion has no day, a removal between two instants the first of them, other kinds none at all", () => {
  const stay = ["stay 1: 10-40", "ward stay 2: A 10-40"];
  expect(dwells(99, ...stay, "catheter 3: arrived ?-14")).toMatchObject([{ insertedOn: null, days: 5 }]);
  // Put in before the patient came: somebody else's insertion, of which only the survivors came here.
  expect(dwells(99, ...stay, "catheter 3: arrived 8-14")).toMatchObject([{ insertedOn: null, days: 7 }]);
  expect(dwells(99, ...stay, "catheter 3: 12-18..20")).toMatchObject([{ days: 7, end: "removed" }]);
  expect(dwells(99, ...stay, "catheter 3: 12-18 suprapubic")).toEqual([]);
});
