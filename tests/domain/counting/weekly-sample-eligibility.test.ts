import { describe, expect, it } from "vitest";
import { weeklySampleEligibility } from "../../../src/domain/counting/weekly-sample-eligibility.ts";

const ward = {
  pastCatheterDays: Array.from({ length: 12 }, () => 80),
  specialtyCareOrOncology: false,
  neonatal: false,
  weekday: 2,
} as const;

const outcomes = (verdict: ReturnType<typeof weeklySampleEligibility>) => verdict.conditions.map((one) => one.outcome);

// Rules: CDC Patient Safety Component Manual, chapter 7, table 2 (from memory).
describe("whether a ward may sample weekly", () => {
  it("may, when every condition holds, and each says why", () => {
    const result = weeklySampleEligibility(ward);
    expect(result.verdict).toBe("may sample");
    expect(result.sentence).toBe("This ward may count its catheters once a week.");
    expect(outcomes(result)).toEqual(["held", "held", "held"]);
    expect(result.conditions[0]?.sentence).toBe(
      "The mean of the past 12 months is 80.0 catheter-days a month; at least 75 are needed.",
    );
  });

  it("may at a mean of exactly 75, from months above and below", () => {
    const pastCatheterDays = [0, 150, 75, 75, 75, 75, 75, 75, 75, 75, 75, 75];
    expect(weeklySampleEligibility({ ...ward, pastCatheterDays }).verdict).toBe("may sample");
  });

  it("may not one catheter-day a year below", () => {
    const pastCatheterDays = [74, ...Array.from({ length: 11 }, () => 75)];
    expect(weeklySampleEligibility({ ...ward, pastCatheterDays }).verdict).toBe("must count daily");
  });

  it("may not just below, with estimated months, and does not print that mean as 75.0", () => {
    const pastCatheterDays = Array.from({ length: 12 }, () => 74.99);
    const result = weeklySampleEligibility({ ...ward, pastCatheterDays });
    expect(result.verdict).toBe("must count daily");
    expect(result.sentence).toBe("This ward must count its catheters every day.");
    expect(result.conditions[0]?.sentence).toContain("is 74.9 catheter-days");
  });

  it.each([
    [{ specialtyCareOrOncology: true }, "Specialty care and oncology wards may not sample."],
    [{ neonatal: true }, "Neonatal wards may not sample."],
  ])("may not with %o", (kind, sentence) => {
    const result = weeklySampleEligibility({ ...ward, ...kind });
    expect(result.verdict).toBe("must count daily");
    expect(outcomes(result)).toEqual(["held", "failed", "held"]);
    expect(result.conditions[1]?.sentence).toBe(sentence);
  });

  it.each([0, 6] as const)("may not on the weekend day %d, and may from Monday to Friday", (weekday) => {
    expect(outcomes(weeklySampleEligibility({ ...ward, weekday }))).toEqual(["held", "held", "failed"]);
    for (const working of [1, 2, 3, 4, 5] as const) {
      expect(weeklySampleEligibility({ ...ward, weekday: working }).verdict).toBe("may sample");
    }
  });

  it("cannot be told with a month that has no count: missing is not zero", () => {
    const pastCatheterDays = [null, ...Array.from({ length: 11 }, () => 200)];
    const result = weeklySampleEligibility({ ...ward, pastCatheterDays });
    expect(result.verdict).toBe("cannot tell");
    expect(result.conditions[0]?.sentence).toContain("Only 11 of the past 12 months");
  });

  it("must count daily for a certain reason although another cannot be told", () => {
    const pastCatheterDays = [null, ...Array.from({ length: 11 }, () => 200)];
    expect(weeklySampleEligibility({ ...ward, pastCatheterDays, neonatal: true }).verdict).toBe("must count daily");
  });

  it("stops unless it is given 12 months", () => {
    expect(() => weeklySampleEligibility({ ...ward, pastCatheterDays: [80] })).toThrow("12 past months are needed");
  });
});
