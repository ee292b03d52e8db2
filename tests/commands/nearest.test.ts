import { expect, it } from "vitest";
import { nearestOf } from "../../src/commands/nearest.ts";

it.each([
  ["exprot", "export"],
  ["reprt", "report"],
  ["x", null],
  ["report", "report"],
])("the nearest of a word: %s is %s", (given, nearest) => {
  expect(nearestOf(given, ["report", "export"])).toBe(nearest);
});
