import { describe, expect, it } from "vitest";
import { monthCatheters } from "../../../src/domain/necessity/month-catheters.ts";
import { textOf } from "../../reference/day-text.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { marchDay, patientFrom, rulesWith } from "./written-notes.ts";

/** The catheters of March 2024, or of its days to 31 when the first one is given, as known on 12 April unless told otherwise. */
function monthOf(lines: readonly string[], { first = "01", now = march("31", "23:59") + 12 * 86_400_000 } = {}) {
  const end = march("31", "23:59") + 60_000;
  const period = { first: marchDay(first), last: marchDay("31"), end };
  const { inserted, dwells, open } = monthCatheters([patientFrom(lines)], period, { rules: rulesWith(), now });
  const letter = (wardId: number) => Object.entries(wardIds).find(([, id]) => id === wardId)?.[0];
  return {
    inserted: inserted.map(({ wardId, catheterId, day }) => `${letter(wardId)} ${catheterId} ${textOf(day).slice(8)}`),
    dwells: dwells.map(({ wardId, days, end: how }) => `${letter(wardId)} ${days} ${how}`),
    open: open.map(letter),
  };
}

const stay = ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-"];

describe("the catheters of a month", () => {
  it("belong to the ward on which they were inserted, and stay until they are removed", () => {
    expect(monthOf([...stay, "catheter 3: 05/12:00-07/12:00"])).toEqual({
      ...{ inserted: ["A 3 05"], dwells: ["A 3 removed"], open: [] },
    });
  });

  it("belong to the inpatient ward that takes them over, where they were inserted in theater", () => {
    const lines = ["stay 1: 05/08:00-", "ward stay 2: C 05/08:00-05/12:00", "ward stay 4: B 05/12:00-"];
    expect(monthOf([...lines, "catheter 3: 05/10:00-06/10:00"])).toMatchObject({
      ...{ inserted: ["B 3 05"], dwells: ["B 2 removed"] },
    });
    // Out again before any inpatient ward had it, it is no ward's.
    expect(monthOf([...lines, "catheter 3: 05/10:00-05/11:00"]).inserted).toEqual([]);
  });

  it("are one time in place across an exchange, and two insertions", () => {
    const exchanged = [...stay, "catheter 3: 12/12:00-14/12:00", "catheter 4: 15/12:00-17/12:00"];
    expect(monthOf(exchanged)).toMatchObject({ inserted: ["A 3 12", "A 4 15"], dwells: ["A 6 removed"] });
    // A full day without one begins a second time in place.
    const twice = [...stay, "catheter 3: 12/12:00-14/12:00", "catheter 4: 16/12:00-17/12:00"];
    expect(monthOf(twice).dwells).toEqual(["A 3 removed", "A 2 removed"]);
  });

  it("are watched to the discharge, and to the end of the month, and no longer", () => {
    const left = ["stay 1: 05/08:00-08/12:00", "ward stay 2: A 05/08:00-08/12:00", "catheter 3: 05/12:00-"];
    expect(monthOf(left).dwells).toEqual(["A 4 discharged"]);
    // On the 30th and the 31st, whenever it is read later.
    const late = [...stay, "catheter 3: 30/12:00-"];
    const soon = monthOf(late, { now: march("31", "23:59") + 60_000 });
    expect(soon).toMatchObject({ dwells: ["A 2 in-place"], open: ["A"] });
    expect(monthOf(late).dwells).toEqual(soon.dwells);
  });

  it("count to the last time at which one found removed was seen", () => {
    expect(monthOf([...stay, "catheter 3: 05/12:00-06/12:00..09/12:00"]).dwells).toEqual(["A 2 removed"]);
  });

  it("leave out what was in place on arrival, other kinds, other months and what stands no more", () => {
    const none = { inserted: [], dwells: [] };
    expect(monthOf([...stay, "catheter 3: arrived ?-07/12:00"])).toMatchObject(none);
    expect(monthOf([...stay, "catheter 3: arrived 04/12:00-07/12:00"])).toMatchObject(none);
    expect(monthOf([...stay, "catheter 3: 05/12:00-07/12:00 suprapubic"])).toMatchObject(none);
    expect(monthOf([...stay, "catheter 3: 05/12:00-07/12:00"], { first: "06" })).toMatchObject(none);
  });
});
