import { day as dayForm } from "../../../shared/day.ts";
import { dayMs, type Instant } from "../../domain/days/day-number.ts";
import type { CellReader } from "../column.ts";
import { day } from "./day.ts";
import { dayWithoutHour, localTime } from "./local-time.ts";

const noonMs = dayMs / 2;

/**
 * A time as an instant; or a day whose time nobody gave, as its noon, with the mark `time-unknown`. Noon is as far from
 * the days beside it as can be. Refuses what is neither, as the two do.
 */
export const dayOrTime: CellReader<Instant> = {
  isIdentifier: false,
  isTime: true,
  read(text, context) {
    const isDay = dayForm.safeParse(text).success;
    const dayAlone = isDay ? null : dayWithoutHour(text, context);
    if (!isDay && dayAlone === null) return localTime.read(text, context) as Instant;
    const number = dayAlone === null ? (day.read(text, context) as number) : context.zone.dayOf(dayAlone);
    const noon = context.zone.firstInstantFrom(number * dayMs + noonMs);
    context.mark("time-unknown");
    return noon;
  },
};
