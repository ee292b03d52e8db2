import { describe, expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { agreementOfMonth } from "../../../src/domain/counting/agreement-month.ts";

function compare(manual: number, electronic: number, daysCompared = 31) {
  const quantity = "catheter-days" as const;
  return agreementOfMonth({
    month: month.parse("2026-03"),
    quantity,
    daysCompared,
    daysInMonth: 31,
    manual,
    electronic,
  });
}

// Rule: within 5% of the manual count, Challener et al., Infect Control Hosp Epidemiol 2020.
describe("the agreement of one month", () => {
  it.each([
    [100, 105, "agrees"],
    [100, 95, "agrees"],
    [100, 106, "differs"],
    [100, 94, "differs"],
    // 5% of 140 is 7, which binary fractions can miss.
    [140, 147, "agrees"],
    [140, 133, "agrees"],
    [20, 21, "agrees"],
    [20, 22, "differs"],
  ])("of %d by hand and %d electronic: %s (exactly 5%% still agrees)", (manual, electronic, outcome) => {
    expect(compare(manual, electronic).outcome).toBe(outcome);
  });

  it("takes the manual count as the reference: 100 against 105 agrees, 105 by hand against 99 does not", () => {
    expect(compare(105, 99).outcome).toBe("differs");
    expect(compare(105, 99).tolerance.low).toBe(99.75);
    expect(compare(99, 103).outcome).toBe("agrees");
  });

  // The minimum of 20, where 5% is one whole day, is common practice.
  it.each([19, 1, 0])("is not judged with %d by hand, even when both are the same", (manual) => {
    const result = compare(manual, manual);
    expect(result.outcome).toBe("too few to judge");
    expect(result.sentence).toContain("At least 20 by manual count are needed to judge.");
  });

  it("has no difference in percent of nothing", () => {
    expect(compare(0, 3).differencePercent).toBeNull();
    expect(compare(200, 190).differencePercent).toBe(-5);
  });

  it("says everything in one sentence or two that a nurse can read", () => {
    expect(compare(164, 178).sentence).toBe(
      "March 2026, catheter-days: 164 by manual count, 178 electronic, on 31 of 31 days with both counts. " +
        "The electronic count is 8.5% higher (14 days); outside the 5% (8.2 days) allowed.",
    );
    expect(compare(164, 163, 30).sentence).toBe(
      "March 2026, catheter-days: 164 by manual count, 163 electronic, on 30 of 31 days with both counts. " +
        "The electronic count is 0.6% lower (1 day); within the 5% (8.2 days) allowed.",
    );
    expect(compare(1200, 1200).sentence).toContain("1,200 electronic");
    expect(compare(1200, 1200).sentence).toContain("The electronic count is the same; within");
    expect(compare(0, 0, 0).sentence).toBe(
      "March 2026, catheter-days: no day has both a manual and an electronic count.",
    );
  });

  it("never prints a month outside the limit as standing on it", () => {
    expect(compare(2001, 2102).outcome).toBe("differs");
    expect(compare(2001, 2102).sentence).toContain("is just over 5% higher (101 days); outside the 5% (100.05 days)");
  });

  it("stops at totals that are not whole", () => {
    expect(() => compare(20.5, 20)).toThrow("manual must be a whole number");
    expect(() => compare(20, -1)).toThrow("electronic must be a whole number");
  });
});
