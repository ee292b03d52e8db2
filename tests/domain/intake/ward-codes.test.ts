import { describe, expect, it } from "vitest";
import { wardQuestions } from "../../../src/domain/intake/ward-codes.ts";

const known = [
  { code: "3E", name: "3 East Medical" },
  { code: "3W", name: "3 West Surgical" },
  { code: "ICU", name: "Intensive care" },
  { code: "MICU-12", name: "MICU-12" },
  { code: "OBSERVATION", name: "Observation" },
  { code: "A", name: "Ward A" },
];
/** The codes of the wards that a code is near. */
const near = (code: string) => wardQuestions([code], known)[0]?.near.map((ward) => ward.code) ?? [];

describe("a code that no ward has", () => {
  it.each([
    // Case, spaces, hyphens and other punctuation, and signs of other widths.
    ["3e", ["3E"]],
    ["3 E", ["3E"]],
    ["3-E", ["3E"]],
    ["3.E.", ["3E"]],
    ["３Ｅ", ["3E"]],
    ["icu", ["ICU"]],
    // The name.
    ["3 East Medical", ["3E"]],
    ["intensive care", ["ICU"]],
    // Signs that look alike.
    ["lCU", ["ICU"]],
    ["MICU-l2", ["MICU-12"]],
    // Two neighbors in the wrong order.
    ["E3", ["3E"]],
    ["IUC", ["ICU"]],
    // A letter typed twice.
    ["ICUU", ["ICU"]],
    // One edit of middle codes, two of long ones.
    ["MICU-13", ["MICU-12"]],
    ["MICU12A", ["MICU-12"]],
    ["OBSERVTON", ["OBSERVATION"]],
  ])("%s may mean %j", (code, wards) => {
    expect(near(code)).toEqual(wards);
  });

  it.each(["4E", "3N", "33E", "B", "CCU", "MICU", "MICU-21X", "SICU-14", "OBSTETRICS", "4 East Medical"])(
    "%s is near none",
    (code) => {
      expect(near(code)).toEqual([]);
    },
  );

  it("is asked against other unknown codes only where they are written alike, and once", () => {
    expect(wardQuestions(["WARD 7", "ward-7", "WARD-8", "WARD 7"], [])).toEqual([
      { code: "ward-7", near: [{ code: "WARD 7", name: "WARD 7" }] },
    ]);
  });

  it("is not asked about an unknown one when the same files describe it; that one is asked about it", () => {
    expect(wardQuestions(["3 E", "3E"], known).map(({ code }) => code)).toEqual(["3 E"]);
  });

  it("is not asked against itself, when the same files describe it", () => {
    expect(wardQuestions(["3E"], known)).toEqual([]);
  });
});
