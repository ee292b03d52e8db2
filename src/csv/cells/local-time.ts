import type { Instant } from "../../domain/days/day-number.ts";
import { readLocalTime } from "../../domain/days/local-time.ts";
import type { CellReader } from "../column.ts";
import { refuseSpreadsheetDate } from "./spreadsheet-date.ts";

/**
 * A time, local to the facility or with an offset, as an instant. A local time that occurs twice takes the earlier
 * instant and the mark `repeated-hour`. Refuses what spreadsheets make of dates, what is no time (`time-unreadable`)
 * and a local time that did not exist (`time-does-not-exist`).
 */
export const localTime: CellReader<Instant> = {
  isIdentifier: false,
  read(text, context) {
    refuseSpreadsheetDate(text);
    const { instant, repeated } = readLocalTime(text, context.zone);
    if (repeated) context.mark("repeated-hour");
    return instant;
  },
};
