import { expect, it } from "vitest";
import { timeOfDay } from "../../../src/csv/cells/time-of-day.ts";
import { readCell } from "./read-cell.ts";

it.each(["00:00", "09:30", "23:59"])("%j is a time of day", (text) => {
  expect(readCell(timeOfDay, text).value).toBe(text);
});

it.each(["24:00", "9:30", "09:60", "09:30:00", "0.5", "noon"])("%j is none", (text) => {
  expect(readCell(timeOfDay, text).value).toBe("csv-time-of-day");
});
