import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eligibilityDays, eligibleOn } from "../../../src/domain/counting/eligibility-day.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";

const stretch = (first: string, last: string) => ({ first: dayOf(first), last: dayOf(last) });
const byText = (days: Map<number, number>) => Object.fromEntries([...days].map(([day, n]) => [textOf(day), n]));

// Rules: CDC Patient Safety Component Manual, chapter 7; those about leaving inpatient care are from memory.
describe("the eligibility day", () => {
  it("follows patient A of figure 1: one calendar day shared by removal and reinsertion goes on (from memory)", () => {
    const days = eligibilityDays({
      catheterDays: [stretch("2024-03-29", "2024-04-02"), stretch("2024-04-03", "2024-04-05")],
      inpatientDays: [stretch("2024-03-29", "2024-04-20")],
    });
    expect(days.get(dayOf("2024-03-31"))).toBe(3);
    expect(days.get(dayOf("2024-04-05"))).toBe(8);
    const eligible = Array.from({ length: 12 }, (_, index) => dayOf("2024-03-28") + index).filter((day) =>
      eligibleOn(days, day),
    );
    expect(eligible.map(textOf)).toEqual([
      "2024-03-31",
      "2024-04-01",
      "2024-04-02",
      "2024-04-03",
      "2024-04-04",
      "2024-04-05",
      "2024-04-06",
    ]);
  });

  it("restarts after one full facility day outside inpatient care, and not after a shorter absence", () => {
    const catheterDays = [stretch("2024-05-01", "2024-05-09")];
    const away = [stretch("2024-05-01", "2024-05-03"), stretch("2024-05-05", "2024-05-09")];
    expect(byText(eligibilityDays({ catheterDays, inpatientDays: away }))).toEqual({
      "2024-05-01": 1,
      "2024-05-02": 2,
      "2024-05-03": 3,
      "2024-05-05": 1,
      "2024-05-06": 2,
      "2024-05-07": 3,
      "2024-05-08": 4,
      "2024-05-09": 5,
    });
    const overnight = [stretch("2024-05-01", "2024-05-03"), stretch("2024-05-04", "2024-05-09")];
    expect(eligibilityDays({ catheterDays, inpatientDays: overnight }).get(dayOf("2024-05-09"))).toBe(9);
  });

  it("judges the day after discharge with the catheter in place like the day after a removal, and no later day", () => {
    const days = eligibilityDays({
      catheterDays: [stretch("2024-05-01", "2024-05-20")],
      inpatientDays: [stretch("2024-05-01", "2024-05-04")],
    });
    expect(eligibleOn(days, dayOf("2024-05-04"))).toBe(true);
    expect(eligibleOn(days, dayOf("2024-05-05"))).toBe(true);
    expect(eligibleOn(days, dayOf("2024-05-06"))).toBe(false);
  });

  it("does not make the day after a two-day catheter eligible", () => {
    const days = eligibilityDays({
      catheterDays: [stretch("2024-05-01", "2024-05-02")],
      inpatientDays: [stretch("2024-05-01", "2024-05-10")],
    });
    expect([1, 2, 3, 4].map((n) => eligibleOn(days, dayOf(`2024-05-0${n}`)))).toEqual([false, false, false, false]);
  });

  // Source: IANA time zone database, Pacific/Apia had no 2011-12-30.
  it("takes the date that Pacific/Apia skipped neither as a day off nor as a catheter day", () => {
    const dayExists = (day: number) => day !== dayOf("2011-12-30");
    const inpatientDays = [stretch("2011-12-28", "2012-01-03")];
    const expected = { "2011-12-28": 1, "2011-12-29": 2, "2011-12-31": 3, "2012-01-01": 4 };
    const exchanged = [stretch("2011-12-28", "2011-12-29"), stretch("2011-12-31", "2012-01-01")];
    const through = [stretch("2011-12-28", "2012-01-01")];
    for (const catheterDays of [exchanged, through]) {
      expect(byText(eligibilityDays({ catheterDays, inpatientDays, dayExists }))).toEqual(expected);
    }
    expect(byText(eligibilityDays({ catheterDays: exchanged, inpatientDays }))["2011-12-31"]).toBe(1);
  });

  it("is eligible on the first existing day after a removal before the skipped date", () => {
    const dayExists = (day: number) => day !== dayOf("2011-12-30");
    const catheterDays = [stretch("2011-12-26", "2011-12-29")];
    const days = eligibilityDays({ catheterDays, inpatientDays: [stretch("2011-12-20", "2012-01-03")], dayExists });
    expect(eligibleOn(days, dayOf("2011-12-31"), dayExists)).toBe(true);
    expect(eligibleOn(days, dayOf("2012-01-01"), dayExists)).toBe(false);
  });

  it("has no day without a catheter or without inpatient care", () => {
    expect(eligibilityDays({ catheterDays: [], inpatientDays: [{ first: 1, last: 9 }] }).size).toBe(0);
    expect(eligibilityDays({ catheterDays: [{ first: 1, last: 9 }], inpatientDays: [] }).size).toBe(0);
  });
});

const stretches = fc.array(
  fc.record({ first: fc.integer({ min: 0, max: 40 }), length: fc.integer({ min: 0, max: 9 }) }).map((one) => ({
    first: one.first,
    last: one.first + one.length,
  })),
  { maxLength: 6 },
);

describe("the eligibility day of random stretches (a failure prints its seed)", () => {
  it("equals the length of the run of days that a count backwards from each day finds", () => {
    fc.assert(
      fc.property(stretches, stretches, fc.integer({ min: 0, max: 50 }), (catheterDays, inpatientDays, skipped) => {
        const dayExists = (day: number) => day !== skipped;
        const days = eligibilityDays({ catheterDays, inpatientDays, dayExists });
        const within = (list: { first: number; last: number }[], day: number) =>
          list.some((one) => one.first <= day && day <= one.last);
        for (let day = -2; day <= 52; day += 1) {
          let run = 0;
          for (let back = day; back >= -2; back -= 1) {
            if (back === skipped) {
              if (back === day) break;
              continue;
            }
            if (!within(catheterDays, back) || !within(inpatientDays, back)) break;
            run += 1;
          }
          expect(days.get(day) ?? 0).toBe(run);
        }
      }),
    );
  });
});
