import { describe, expect, it } from "vitest";
import { uncountedCensuses } from "../../../src/domain/counting/uncounted-censuses.ts";
import { stayFromLines, wardIds } from "../timeline/written.ts";

/** A census at each whole ten, of the day of that number: day 1 at 10, day 2 at 20. */
const census = {
  days: Int32Array.from({ length: 12 }, (_, i) => i),
  instants: Float64Array.from({ length: 12 }, (_, i) => i * 10),
};
/** A and B are inpatient wards; C is one for outpatients unless told otherwise. */
const rules = (isDescribed = true) => ({
  census,
  isInpatient: (wardId: number) => wardId !== wardIds.C,
  isDescribed: (wardId: number) => isDescribed || wardId !== wardIds.C,
});
const letter = (id: number | null) => Object.entries(wardIds).find(([, known]) => known === id)?.[0] ?? "-";
/** Each as text: kind, day, the inpatient wards before and after. */
const found = (lines: readonly string[], { now = 110, isDescribed = true } = {}) =>
  uncountedCensuses(stayFromLines(...lines), rules(isDescribed), now).map(
    ({ kind, day, lastWardId, nextWardId }) => `${kind} ${day} ${letter(lastWardId)}${letter(nextWardId)}`,
  );

describe("a census of a stay that may miss a patient-day", () => {
  it.each<[string, string[], string[]]>([
    ["is none of time on inpatient wards", ["stay 1: 5-35", "ward stay 2: A 5-18", "ward stay 3: B 18-35"], []],
    [
      "is one between two wards of which no kind is recorded",
      ["stay 1: 5-45", "ward stay 2: A 5-15", "ward stay 3: B 32-45"],
      ["no-ward 2 AB", "no-ward 3 AB"],
    ],
    [
      "is none of leave, of a procedure with the bed held, and of an area that was confirmed",
      [
        "stay 1: 5-75",
        "ward stay 2: A 5-15 then leave",
        "ward stay 3: B 22-35 then procedure",
        "ward stay 4: A 42-55 then outpatient",
        "ward stay 5: B 62-75",
      ],
      [],
    ],
    ["is one before the first move", ["stay 1: 5-45", "ward stay 2: A 25-45"], ["no-ward 1 -A", "no-ward 2 -A"]],
    ["is one after the last move", ["stay 1: 5-45", "ward stay 2: A 5-25"], ["no-ward 3 A-", "no-ward 4 A-"]],
    [
      "is one of time without a ward after an outpatient area",
      ["stay 1: 5-45", "ward stay 2: C 5-15"],
      ["no-ward 2 --", "no-ward 3 --", "no-ward 4 --"],
    ],
    [
      "is one of time without a ward after an outpatient area, before the ward that follows",
      ["stay 1: 5-55", "ward stay 2: C 5-15", "ward stay 3: B 35-55"],
      ["no-ward 2 -B", "no-ward 3 -B"],
    ],
    [
      "is one in an outpatient area between two inpatient wards, to be confirmed",
      ["stay 1: 5-45", "ward stay 2: A 5-15", "ward stay 3: C 15-32", "ward stay 4: A 32-45"],
      ["outpatient 2 AA", "outpatient 3 AA"],
    ],
    [
      "is none in such an area once that is confirmed at the ward before",
      ["stay 1: 5-45", "ward stay 2: A 5-15 then outpatient", "ward stay 3: C 15-32", "ward stay 4: A 32-45"],
      [],
    ],
    [
      "is one again in a later area that was not confirmed",
      [
        "stay 1: 5-75",
        "ward stay 2: A 5-15 then outpatient",
        "ward stay 3: C 15-25",
        "ward stay 4: A 25-35",
        "ward stay 5: C 35-45",
        "ward stay 6: B 45-75",
      ],
      ["outpatient 4 AB"],
    ],
    [
      "is none in an outpatient area before the first or after the last inpatient ward",
      ["stay 1: 5-65", "ward stay 2: C 5-15", "ward stay 3: A 15-45", "ward stay 4: C 45-65"],
      [],
    ],
    [
      "is one of a procedure from an outpatient area: no bed is held there",
      ["stay 1: 5-65", "ward stay 2: A 5-12", "ward stay 3: C 12-15 then procedure", "ward stay 4: B 25-65"],
      ["outpatient 2 AB"],
    ],
    ["is every one of a stay without a single move", ["stay 1: 5-25"], ["no-ward 1 --", "no-ward 2 --"]],
  ])("%s", (_, lines, censuses) => {
    expect(found(lines)).toEqual(censuses);
  });

  it("is looked for up to now in a stay that lasts, and not in one that was voided or has not begun", () => {
    const lines = ["stay 1: 5-", "ward stay 2: A 5-15"];
    expect(found(lines, { now: 30 })).toEqual(["no-ward 2 A-", "no-ward 3 A-"]);
    expect(found(lines, { now: 4 })).toEqual([]);
    const voided = { ...stayFromLines(...lines), voidReason: "wrong patient" };
    expect(uncountedCensuses(voided, rules(), 110)).toEqual([]);
  });

  it("is none on a ward whose setting is unknown, and one in the time without a ward after it", () => {
    const lines = ["stay 1: 5-45", "ward stay 2: A 5-15", "ward stay 3: C 15-25", "ward stay 4: B 35-45"];
    expect(found(lines, { isDescribed: false })).toEqual(["no-ward 3 AB"]);
  });

  it("is one at the very instant at which the ward was left, and none at the one of arrival or discharge", () => {
    expect(found(["stay 1: 10-40", "ward stay 2: A 10-20", "ward stay 3: B 30-40"])).toEqual(["no-ward 2 AB"]);
  });
});
