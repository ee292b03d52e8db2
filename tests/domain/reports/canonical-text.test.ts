import { describe, expect, it } from "vitest";
import { canonicalText, reportContent } from "../../../src/domain/reports/canonical-text.ts";
import { monthFigures } from "../../../src/domain/reports/month-figures.ts";
import { figureFacts } from "./figure-facts.ts";

describe("the canonical text", () => {
  it("is that of the standard's own example", () => {
    // RFC 8785, section 3.2.2 and 3.2.3.
    const value = {
      numbers: [Number("333333333.33333329"), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"/",
      literals: [null, true, false],
    };
    expect(canonicalText(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it("does not depend on the order in which things were said, and refuses what JSON cannot say", () => {
    expect(canonicalText({ b: 1, a: { d: 2, c: 3 } })).toBe(canonicalText({ a: { c: 3, d: 2 }, b: 1 }));
    expect(() => canonicalText({ value: Number.NaN })).toThrow("NaN");
  });
});

describe("what of a report is signed for", () => {
  it("is the same whenever it is read, and other when a figure is", () => {
    const told = { A: { days: [400, 200] as const, open: 2 } };
    const content = (facts: ReturnType<typeof figureFacts>) => canonicalText(reportContent(monthFigures(facts)));
    const facts = figureFacts(told);
    const later = { ...figureFacts({ A: { ...told.A, open: 5 } }), days: { ...facts.days, asOf: facts.days.asOf + 1 } };
    expect(content(later)).toBe(content(facts));
    expect(content(figureFacts({ A: { days: [400, 201] } }))).not.toBe(content(facts));
  });
});
