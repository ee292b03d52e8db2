import { describe, expect, it } from "vitest";
import { readCount } from "../../../src/domain/criteria/index.ts";

describe("every form of a count", () => {
  it.each([
    ["5", 5],
    ["1,000,000", 1_000_000],
    ["1 000 000", 1_000_000],
    ["12,345 cfu", 12_345],
    ["100cfu", 100],
    ["1e12", 1e12],
    ["5 colony forming unit/ml", 5],
    ["5 colonies  forming  units/ml", 5],
    ["5 col forming units per l.", 0.005],
    ["100000 col", 100_000],
    ["100000 colonies", 100_000],
    ["100000 CFU / ml", 100_000],
    ["100000CFU/mL.", 100_000],
    ["100000 per milliliter", 100_000],
    ["100000 colony forming units per ml", 100_000],
    ["100000 colonies/ml", 100_000],
    ["100000 organisms/ml", 100_000],
    ["100000 germs per ml", 100_000],
    ["100000 cells/l", 100],
    ["100000 per liter", 100],
    ["100 k", 100_000],
    ["99k", 99_000],
    ["10**5", 100_000],
    ["10 ^ 5", 100_000],
    ["2 × 10^4", 20_000],
    ["2*10^4", 20_000],
    ["1.5 x 10^5", 150_000],
    ["1e+5", 100_000],
    ["2.5E4", 25_000],
    ["10^12", 1e12],
    ["10^15 CFU/L", 1e12],
    ["10E5", 100_000],
    ["1x10E5", 100_000],
    ["5 x 10E5 CFU/ml", 500_000],
    ["10E3", 1000],
    ["9 x 10E3", 9000],
  ])("%j is %s per ml", (text, cfuPerMl) => {
    expect(readCount(text)).toEqual({ kind: "number", cfuPerMl });
  });

  it.each([
    [">5", ">"],
    ["> 5", ">"],
    ["more than 5", ">"],
    ["Greater than 5", ">"],
    ["over 5", ">"],
    [">=5", ">="],
    ["=>5", ">="],
    ["≥ 5", ">="],
    ["at least 5", ">="],
    ["<5", "<"],
    ["less than 5", "<"],
    ["under 5", "<"],
    ["<=5", "<="],
    ["=<5", "<="],
    ["≤5", "<="],
    ["at most 5", "<="],
    ["up to 5", "<="],
  ])("%j is a bound: %s 5", (text, relation) => {
    expect(readCount(text)).toEqual({ kind: "bound", relation, cfuPerMl: 5 });
  });

  it.each([
    ["5-6", 5, 6],
    ["5 – 6", 5, 6],
    ["10^4 to 10^5 CFU/ml", 10_000, 100_000],
    ["10^7-10^8 CFU/L", 10_000, 100_000],
    ["10E4", 10_000, 100_000],
    ["10e+04 CFU/ml", 10_000, 100_000],
    ["1x10E4", 10_000, 100_000],
    ["5 x 10E4", 50_000, 500_000],
    ["2.5 x 10 E4", 25_000, 250_000],
    ["10E7 CFU/L", 10_000, 100_000],
    ["10E3-10E4", 1000, 100_000],
    ["10E1", 10, 100],
  ])("%j is from %s to %s", (text, lowCfuPerMl, highCfuPerMl) => {
    expect(readCount(text)).toEqual({ kind: "range", lowCfuPerMl, highCfuPerMl });
  });

  it.each(["No growth", "rare", "few", "light growth", "moderate amount", "heavy amounts", "1+", "4+", "+", "+++"])(
    "%j is an amount in words",
    (text) => {
      expect(readCount(` ${text} `)).toEqual({ kind: "words", text });
    },
  );

  it.each([
    "10^13",
    "5-5",
    "-6",
    "5-",
    "x5",
    "5x",
    "1,0000",
    "1 0000",
    "1,000,00",
    "x1,000",
    "1,000x",
    "1234,567",
    "1234 567",
    "1000k",
    "x100k",
    "100kk",
    "10^123",
    "x10^5",
    "10^5x",
    "110^5",
    "15e4",
    "0e4",
    "1e123",
    "x1e5",
    "1e5x",
    "1e-5",
    "> >5",
    "about 5",
    "5 at least",
    "5>",
    "5>=",
    "5<=",
    "5 >= 4",
    "5<",
    "5 <= 6",
    "5/ml/day",
    "5 cfu seen",
    "5/mlx",
    "1+ seen",
    "5+",
    "12+",
    "++ few",
    "few growth seen",
  ])("%j has another form", (text) => {
    expect(readCount(text)).toEqual({ kind: "unreadable", text });
  });
});
