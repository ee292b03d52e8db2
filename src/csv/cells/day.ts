import { day as dayForm } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayNumber } from "../../domain/days/day-number.ts";
import type { CellReader } from "../column.ts";
import { refuseSpreadsheetDate } from "./spreadsheet-date.ts";

/** Years that a day may lie in: wide enough for every birth date, and no slip such as 0206 for 2026. */
const firstYear = 1900;
const lastYear = 2100;

/**
 * A calendar day, `YYYY-MM-DD`, as its number. Refuses what spreadsheets make of dates, and all else that is no day
 * from 1900 to 2100 (`day-unreadable`).
 */
export const day: CellReader<DayNumber> = {
  isIdentifier: false,
  read(text) {
    const read = dayForm.safeParse(text);
    if (!read.success) {
      refuseSpreadsheetDate(text);
      return refuse("day-unreadable", reason(text));
    }
    const year = Number(text.slice(0, 4));
    if (year < firstYear || year > lastYear) {
      return refuse("day-unreadable", `The year is not between ${firstYear} and ${lastYear}.`);
    }
    return dayNumber(read.data);
  },
};

function reason(text: string): string {
  if (/^\d{4}-\d\d-\d\d$/.test(text)) return "There is no such day in the calendar.";
  if (/^\d{4}-\d\d-\d\d[T ]/.test(text)) return "This is a day with a time where a day alone is wanted.";
  return "This is not a day in the form YYYY-MM-DD.";
}
