import { describe, expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { agreement, type CountedDay } from "../../../src/domain/counting/agreement.ts";
import { dayOf } from "../../reference/day-text.ts";

interface Counts {
  patients: number;
  catheters: number;
}

/** The first `days` days of a month with the same two counts every day. */
function monthOfDays(text: string, manual: Counts | null, electronic: Counts | null, days = 28): CountedDay[] {
  return Array.from({ length: days }, (_, index) => ({ day: dayOf(`${text}-01`) + index, manual, electronic }));
}

const usual = { patients: 20, catheters: 10 };
const same = (text: string) => monthOfDays(text, usual, usual);
const lastMonth = month.parse("2026-03");

// Rules: three consecutive months within 5%, Challener et al., Infect Control Hosp Epidemiol 2020; days with both counts
// alone and the minimum of 20: common practice.
describe("the agreement of two counts of a ward", () => {
  it("is accepted when both quantities agree in each of three months", () => {
    const result = agreement({ days: [...same("2026-01"), ...same("2026-02"), ...same("2026-03")], lastMonth });
    expect(result.verdict).toBe("accepted");
    expect(result.sentence).toBe("Accepted: the electronic count of this ward may replace the manual count.");
    expect(result.catheterDays.months.map((one) => one.month)).toEqual(["2026-01", "2026-02", "2026-03"]);
    expect(result.patientDays.months.map((one) => one.manual)).toEqual([560, 560, 560]);
    expect(result.catheterDays.months.map((one) => one.daysInMonth)).toEqual([31, 28, 31]);
  });

  it("crosses the turn of the year", () => {
    const days = [...same("2025-11"), ...same("2025-12"), ...same("2026-01")];
    const result = agreement({ days, lastMonth: month.parse("2026-01") });
    expect(result.verdict).toBe("accepted");
    expect(result.patientDays.months.map((one) => one.month)).toEqual(["2025-11", "2025-12", "2026-01"]);
  });

  it("is not yet when one quantity of one month differs, and names it", () => {
    const february = monthOfDays("2026-02", usual, { patients: 20, catheters: 11 });
    const result = agreement({ days: [...same("2026-01"), ...february, ...same("2026-03")], lastMonth });
    expect(result.patientDays.verdict).toBe("accepted");
    expect(result.catheterDays.verdict).toBe("not yet");
    expect(result.verdict).toBe("not yet");
    expect(result.sentence).toBe(
      "Not yet for catheter-days: in February 2026 the counts differ by more than 5%. " +
        "Three months in a row within 5% are needed. Keep counting this ward by hand.",
    );
  });

  it("starts again after a month outside and accepts the next three", () => {
    const january = monthOfDays("2026-01", usual, { patients: 23, catheters: 10 });
    const days = [...january, ...same("2026-02"), ...same("2026-03"), ...same("2026-04")];
    expect(agreement({ days, lastMonth }).verdict).toBe("not yet");
    expect(agreement({ days, lastMonth: month.parse("2026-04") }).verdict).toBe("accepted");
  });

  it("judges each month by itself: errors that cancel over three months are not accepted", () => {
    const low = monthOfDays("2026-01", usual, { patients: 20, catheters: 8 });
    const high = monthOfDays("2026-02", usual, { patients: 20, catheters: 12 });
    expect(agreement({ days: [...low, ...high, ...same("2026-03")], lastMonth }).verdict).toBe("not yet");
  });

  it("needs consecutive months: one without a day that has both counts breaks the row", () => {
    const february = [...monthOfDays("2026-02", usual, null, 14)];
    const days = [...same("2025-12"), ...same("2026-01"), ...february, ...same("2026-03")];
    const result = agreement({ days, lastMonth });
    expect(result.verdict).toBe("not yet");
    expect(result.catheterDays.sentence).toContain("February 2026 has no day with both counts");
  });

  it("compares only days that have both counts", () => {
    const gaps: CountedDay[] = [
      { day: dayOf("2026-03-29"), manual: { patients: 90, catheters: 90 }, electronic: null },
      { day: dayOf("2026-03-30"), manual: null, electronic: { patients: 90, catheters: 90 } },
    ];
    const result = agreement({
      days: [...same("2026-01"), ...same("2026-02"), ...same("2026-03"), ...gaps],
      lastMonth,
    });
    expect(result.verdict).toBe("accepted");
    expect(result.patientDays.months[2]).toMatchObject({ manual: 560, electronic: 560, daysCompared: 28 });
  });

  it("is too few to judge for a ward with few catheters, although its patient-days are accepted", () => {
    const few = { patients: 20, catheters: 0 };
    const some = { patients: 20, catheters: 5 };
    const days = ["2026-01", "2026-02", "2026-03"].flatMap((text) => [
      ...monthOfDays(text, few, few, 25),
      ...monthOfDays(text, some, some).slice(25),
    ]);
    const result = agreement({ days, lastMonth });
    expect(result.patientDays.verdict).toBe("accepted");
    expect(result.verdict).toBe("too few to judge");
    expect(result.sentence).toBe(
      "Too few to judge catheter-days: fewer than 20 by manual count in January 2026, February 2026, March 2026. " +
        "Keep counting this ward by hand.",
    );
  });

  it("is not yet rather than too few when the other quantity differs", () => {
    const manual = { patients: 20, catheters: 0 };
    const days = ["2026-01", "2026-02", "2026-03"].flatMap((text) =>
      monthOfDays(text, manual, { patients: 25, catheters: 0 }),
    );
    const result = agreement({ days, lastMonth });
    expect(result.catheterDays.verdict).toBe("too few to judge");
    expect(result.verdict).toBe("not yet");
    expect(result.sentence).toContain("Too few to judge catheter-days");
  });

  it("has no verdict but not yet without any count", () => {
    expect(agreement({ days: [], lastMonth }).verdict).toBe("not yet");
  });

  it("stops at a repeated day and at counts that cannot be", () => {
    expect(() => agreement({ days: [...same("2026-03"), ...same("2026-03")], lastMonth })).toThrow("given twice");
    const wrong = monthOfDays("2026-03", usual, { patients: 1, catheters: 2 });
    expect(() => agreement({ days: wrong, lastMonth })).toThrow("more than");
  });
});
