import { describe, expect, it } from "vitest";
import type { Problem } from "../../shared/problems.ts";
import { textRows } from "../../src/csv/text-rows.ts";

const columns = ["ward_type", "rate_per_1000", "note"];
const read = (text: string) => textRows(text, columns, "baseline-unusable");
const faults = (text: string) => {
  try {
    return read(text);
  } catch (error) {
    return (error as Problem).faults.map(({ detail }) => detail);
  }
};

describe("a small CSV text", () => {
  it("is rows by the name of their column, in any order, with blank lines and semicolons", () => {
    const rows = [{ ward_type: "medical", rate_per_1000: "1.5" }];
    expect(read("ward_type,rate_per_1000\nmedical,1.5\n")).toEqual(rows);
    expect(read('\uFEFFRate_per_1000;ward_type\r\n\r\n1.5;"medical"\r\n')).toEqual(rows);
    // A cell that is left out at the end of a line is empty.
    expect(read("ward_type,note\nmedical\n")).toEqual([{ ward_type: "medical", note: "" }]);
  });

  it("is refused with every fault, each with its line", () => {
    expect(faults(" \n")).toEqual(["The file is empty."]);
    expect(faults('ward_type,rate,ward_type\nmedical,1,2,3\nb"urn,1\n')).toEqual([
      "Line 1: the column 2 is not known; known are ward_type, rate_per_1000, note.",
      "Line 1: the column ward_type is there twice.",
      "Line 2: there are 4 cells for 3 columns.",
      "Line 3: A double quote is inside a cell that does not begin with one.",
    ]);
  });
});
