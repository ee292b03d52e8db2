import { describe, expect, it } from "vitest";
import { readableText } from "../../../src/csv/cells/characters.ts";

describe("readableText", () => {
  it.each([
    [" N1 ", "N1"],
    ["\t\u00a0N1\u3000\r\n", "N1"],
    ["", ""],
    ["a b", "a b"],
  ])("takes the white space from around %j", (cell, text) => {
    expect(readableText(cell)).toBe(text);
  });

  it("takes up to 200 characters, however many code units they are", () => {
    expect(readableText("x".repeat(200))).toHaveLength(200);
    expect(readableText("😀".repeat(200))).toHaveLength(400);
    expect(readableText(`${" ".repeat(300)}x`)).toBe("x");
    expect(() => readableText("x".repeat(201))).toThrow("more than 200 characters");
    expect(() => readableText("😀".repeat(201))).toThrow("more than 200 characters");
  });

  it("says where in the cell a character was lost", () => {
    expect(() => readableText("😀S\uFFFDd")).toThrow("Character 3 of the cell");
  });
});
