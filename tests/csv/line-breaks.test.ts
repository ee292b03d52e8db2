import { describe, expect, it } from "vitest";
import { findLineEnd, lineBreaksIn } from "../../src/csv/line-breaks.ts";

describe("lineBreaksIn", () => {
  it.each([
    ["", 0],
    ["a b", 0],
    ["a\nb", 1],
    ["a\r\nb", 1],
    ["a\rb", 1],
    ["\n\r", 2],
    ["\r\n\r\n\n\r", 4],
  ])("counts in %j", (text, breaks) => {
    expect(lineBreaksIn(text)).toBe(breaks);
  });
});

describe("findLineEnd", () => {
  it("finds the first line feed or carriage return from a place on", () => {
    expect(findLineEnd("ab\ncd\r\nef", 0)).toBe(2);
    expect(findLineEnd("ab\ncd\r\nef", 3)).toBe(5);
    expect(findLineEnd("ab\ncd\r\nef", 7)).toBe(9);
  });
});
