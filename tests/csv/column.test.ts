import { describe, expect, it } from "vitest";
import { text } from "../../src/csv/cells/text.ts";
import { optional, optionalOr, required } from "../../src/csv/column.ts";

describe("the kinds of columns", () => {
  it("say whether a value must be there and what its absence stands for", () => {
    expect(required(text)).toEqual({ reader: text, isRequired: true, whenEmpty: null });
    expect(optional(text)).toEqual({ reader: text, isRequired: false, whenEmpty: null });
    expect(optionalOr(text, "none")).toEqual({ reader: text, isRequired: false, whenEmpty: "none" });
  });
});
