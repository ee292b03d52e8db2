import { describe, expect, it } from "vitest";
import { indications } from "../../../shared/catheter-words.ts";
import { policyBody } from "../../../shared/policy.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { policyFaults } from "../../../src/domain/policy/policy-faults.ts";

describe("the built-in policy", () => {
  it("can be set as it is", () => {
    expect(policyBody.parse(defaultPolicy)).toEqual(defaultPolicy);
    expect(policyFaults(defaultPolicy)).toEqual([]);
  });

  // HICPAC 2009, table 2: six appropriate indications.
  it("accepts the six indications of the guideline's table, each with its source", () => {
    expect(defaultPolicy.indications.map(({ code }) => code)).toEqual([
      "retention-or-obstruction",
      "output-critically-ill",
      "perioperative",
      "wound-healing",
      "immobilization",
      "end-of-life",
    ]);
    for (const [i, { code, label, source }] of defaultPolicy.indications.entries()) {
      expect(label).toBe((indications as Record<string, string>)[code]);
      expect(source).toMatch(new RegExp(`^HICPAC.* 2009, table 2, item ${i + 1}$`));
    }
  });

  it("asks for a review each day from day 2 on, by noon (common practice)", () => {
    expect(defaultPolicy).toMatchObject({ reviewFromDay: 2, reviewDueAt: "12:00", confirmationHours: 48 });
  });

  // No guideline gives a number of days for every catheter; HICPAC 2009: after surgery preferably within 24 hours.
  it("has a threshold for perioperative use alone, on the first day that lies wholly after 24 hours", () => {
    expect(defaultPolicy.thresholdDays).toBeNull();
    expect(defaultPolicy.thresholdByIndication).toEqual({ perioperative: 2 });
    // Inserted in the last minute of day 1: 24 hours have passed only in the last minute of day 2.
    const hoursPastAtDayStart = (day: number) => (day - 1) * 24 - (24 - 1 / 60);
    expect([2, 3].map((day) => hoursPastAtDayStart(day) >= 24)).toEqual([false, true]);
  });

  it("names a source for every item of the care check", () => {
    expect(defaultPolicy.bundle).toHaveLength(8);
    expect(defaultPolicy.bundle.filter(({ source }) => !/AHRQ|HICPAC/.test(source))).toEqual([]);
  });
});
