import type { Instant } from "../../domain/days/day-number.ts";
import { instantOfDay, midnightOf, readLocalTime } from "../../domain/days/local-time.ts";
import type { CellContext, CellReader } from "../column.ts";
import { refuseSpreadsheetDate } from "./spreadsheet-date.ts";

/**
 * A time, local to the facility or with an offset, as an instant. A local time that occurs twice takes the earlier
 * instant and the mark `repeated-hour`. 00:00 of a source that means by it that the hour is not known is taken just
 * after the day began, with the mark `no-hour`: what came at that time was not there at a census of 00:00, and what went
 * was, as with every real hour of the day. Refuses what spreadsheets make of dates, what is no time (`time-unreadable`)
 * and a local time that did not exist (`time-does-not-exist`).
 */
export const localTime: CellReader<Instant> = {
  isIdentifier: false,
  isTime: true,
  read(text, context) {
    refuseSpreadsheetDate(text);
    const day = dayWithoutHour(text, context);
    if (day !== null) {
      context.mark("no-hour");
      return day;
    }
    const { instant, repeated } = readLocalTime(text, context.zone);
    if (repeated) context.mark("repeated-hour");
    return instant;
  },
};

/** The instant that is taken where a text gives a day alone, by what its source means by 00:00; else null. */
export function dayWithoutHour(
  text: string,
  { zone, settings }: Pick<CellContext, "zone" | "settings">,
): Instant | null {
  if (settings.midnight !== "no-hour") return null;
  const day = midnightOf(text, zone);
  return day === null ? null : instantOfDay(day, zone);
}
