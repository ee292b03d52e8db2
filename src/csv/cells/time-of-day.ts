import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

/** A time of day, `HH:MM` from 00:00 to 23:59, local to the facility. Refuses all else (`csv-time-of-day`). */
export const timeOfDay: CellReader<string> = {
  isIdentifier: false,
  read(text) {
    if (/^([01]\d|2[0-3]):[0-5]\d$/.test(text)) return text;
    return refuse("csv-time-of-day", "This is not a time from 00:00 to 23:59 in the form HH:MM.");
  },
};
