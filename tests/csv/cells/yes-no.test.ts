import { describe, expect, it } from "vitest";
import { yesNo } from "../../../src/csv/cells/yes-no.ts";
import { readCell } from "./read-cell.ts";

describe("yesNo", () => {
  it.each(["yes", "Y", "TRUE", "1"])("takes %j for yes", (text) => {
    expect(readCell(yesNo, text).value).toBe(true);
  });

  it.each(["no", "N", "False", "0"])("takes %j for no", (text) => {
    expect(readCell(yesNo, text).value).toBe(false);
  });

  it.each(["maybe", "x", "2", "yes no"])("refuses %j", (text) => {
    expect(readCell(yesNo, text).value).toBe("csv-word");
  });
});
