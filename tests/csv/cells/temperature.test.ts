import { expect, it } from "vitest";
import { temperature } from "../../../src/csv/cells/temperature.ts";
import { readCell } from "./read-cell.ts";

it.each([
  ["38.4", { hundredths: 3_840, unit: "C" }],
  ["101.1 °F", { hundredths: 10_110, unit: "F" }],
  ["38.456", "csv-temperature"],
  ["38-39", "csv-temperature"],
  ["fever", "csv-temperature"],
])("%j is read as %j", (text, read) => {
  expect(readCell(temperature, text).value).toEqual(read);
});
