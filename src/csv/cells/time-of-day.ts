import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";

/**
 * A time of day, `HH:MM` from 00:00 to 23:59, local to the facility; null, with the mark `no-hour`, for 00:00 of a source
 * that means by it that the hour is not known. Refuses all else (`csv-time-of-day`).
 */
export const timeOfDay: CellReader<string | null> = {
  isIdentifier: false,
  isTime: true,
  read(text, context) {
    if (text === "00:00" && context.settings.midnight === "no-hour") {
      context.mark("no-hour");
      return null;
    }
    if (/^([01]\d|2[0-3]):[0-5]\d$/.test(text)) return text;
    return refuse("csv-time-of-day", "This is not a time from 00:00 to 23:59 in the form HH:MM.");
  },
};
