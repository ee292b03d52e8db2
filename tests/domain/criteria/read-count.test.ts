import { describe, expect, it } from "vitest";
import { countKind } from "../../../shared/culture-words.ts";
import { countText, reaches, readCount } from "../../../src/domain/criteria/index.ts";

const limit = 100_000;

describe("counts as laboratories write them", () => {
  it.each([
    [">100000", "yes"],
    [">100,000 CFU/ml", "yes"],
    [">=1E5", "yes"],
    ["≥ 10^5 cfu/mL", "yes"],
    ["10^5", "yes"],
    ["1 x 10^5", "yes"],
    ["1.5x10^5 CFU per ml", "yes"],
    ["100000", "yes"],
    ["100 000", "yes"],
    ["100k", "yes"],
    ["10^8 CFU/L", "yes"],
    ["100,000-1,000,000", "yes"],
    ["more than 100000", "yes"],
    ["99,999", "no"],
    ["50000", "no"],
    ["<100000", "no"],
    ["10^4", "no"],
    ["10^7 CFU/L", "no"],
    ["10,000-50,000", "no"],
    ["1.5E4", "no"],
    // Ten to the fourth, or as a calculator reads it: ten times that.
    ["10E4", "straddles"],
    ["5 x 10E4", "straddles"],
    [">10E4", "straddles"],
    ["<10E5", "straddles"],
    ["<10E4", "no"],
    [">10E5", "yes"],
    ["1x10E5", "yes"],
    ["50,000-100,000", "straddles"],
    ["75,000 - 100,000 CFU/ml", "straddles"],
    ["10^4-10^6", "straddles"],
    [">50000", "straddles"],
    ["<=100000", "straddles"],
    ["<1000000", "straddles"],
    ["heavy growth", "unknown"],
    ["3+", "unknown"],
    ["", "unknown"],
  ])("%j reaches 100,000: %s", (text, answer) => {
    expect(reaches(readCount(text), limit)).toBe(answer);
  });

  it.each(["10.000", "1,00,000", "100,000-", "100000-50000", "lots", "10^", "5 x 10", "1e400", "10^50", "-5", ">>5"])(
    "%j is not guessed",
    (text) => {
      expect(readCount(text)).toEqual({ kind: "unreadable", text });
    },
  );

  it.each([
    [">100", 100, "yes"],
    [">=100", 100, "yes"],
    [">99", 100, "straddles"],
    ["<100", 100, "no"],
    ["<=100", 100, "straddles"],
    ["<101", 100, "straddles"],
    ["<=99", 100, "no"],
    ["100-200", 100, "yes"],
    ["99-100", 100, "straddles"],
    ["98-99", 100, "no"],
    ["99", 100, "no"],
    ["100", 100, "yes"],
  ])("%s reaches %s: %s", (text, limitCfuPerMl, answer) => {
    expect(reaches(readCount(text), limitCfuPerMl)).toBe(answer);
  });

  it("tells a missing count from one that cannot be read", () => {
    expect([readCount(null).kind, readCount("  ").kind, readCount("?").kind]).toEqual([
      "missing",
      "missing",
      "unreadable",
    ]);
  });

  it.each([
    ["10^5", "100,000 CFU/ml"],
    [">=1E5", ">= 100,000 CFU/ml"],
    ["50,000-100,000", "50,000 to 100,000 CFU/ml"],
    ["", "no count"],
    ["heavy growth", "“heavy growth”"],
  ])("%j is shown as %s", (text, shown) => {
    expect(countText(readCount(text))).toBe(shown);
  });

  it("gives kinds of the closed list alone", () => {
    for (const text of ["5", ">5", "5-6", "few", "", "?"]) expect(countKind.options).toContain(readCount(text).kind);
  });
});
