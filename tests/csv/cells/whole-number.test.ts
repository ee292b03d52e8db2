import { describe, expect, it } from "vitest";
import { wholeNumber } from "../../../src/csv/cells/whole-number.ts";
import { readCell } from "./read-cell.ts";

const read = (text: string) => readCell(wholeNumber({ least: 0, most: 40 }), text).value;

describe("wholeNumber", () => {
  it.each([
    ["0", 0],
    ["16", 16],
    ["007", 7],
    ["+3", 3],
    ["40", 40],
  ])("reads %j", (text, number) => {
    expect(read(text)).toBe(number);
  });

  it("has one zero", () => {
    expect(Object.is(read("-0"), 0)).toBe(true);
  });

  it.each(["-1", "41", "99999999999999999999", "12.0", "1,000", "1e1", "0x10", "twelve", "16 Fr", "１６", "--1"])(
    "refuses %j",
    (text) => {
      expect(read(text)).toBe("csv-number");
    },
  );
});
