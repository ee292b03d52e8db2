import { refuse } from "../../../shared/problems.ts";

const serialNumber = /^\d{1,6}([.,]\d+)?$/;
const dayOrMonthFirst = /^\d{1,2}[/.-]\d{1,2}[/.-]\d{2,4}(?!\d)/;

/**
 * Refuses the two things that spreadsheets write for dates: the number of days since 1900 (`csv-date-serial`) and a
 * form in which day and month cannot be told apart (`csv-date-ambiguous`).
 */
export function refuseSpreadsheetDate(text: string): void {
  if (serialNumber.test(text)) {
    refuse("csv-date-serial", "This is a number where a date is wanted, as spreadsheets keep dates inside.");
  }
  if (dayOrMonthFirst.test(text)) {
    refuse("csv-date-ambiguous", "Day and month cannot be distinguished in this date.");
  }
}
