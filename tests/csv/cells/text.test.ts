import { describe, expect, it } from "vitest";
import { text } from "../../../src/csv/cells/text.ts";
import { readCell } from "./read-cell.ts";

describe("text", () => {
  it.each([
    ["North wing", "North wing"],
    ["1.5E+3", "1.5E+3"],
    ["a\r\nb\rc\nd\te", "a\nb\nc\nd\te"],
    ["e\u0301", "\u00e9"],
    ["👩\u200d⚕️", "👩\u200d⚕️"],
  ])("reads %j", (cell, value) => {
    expect(readCell(text, cell).value).toBe(value);
  });

  it.each(["a\u0000b", "a\u001bb", "a\u007fb", "a\u009fb"])("refuses the control character in %j", (cell) => {
    expect(readCell(text, cell).value).toBe("csv-character");
  });
});
