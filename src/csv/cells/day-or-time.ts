import { day as dayForm } from "../../../shared/day.ts";
import { dayMs, type Instant } from "../../domain/days/day-number.ts";
import type { CellReader } from "../column.ts";
import { day } from "./day.ts";
import { localTime } from "./local-time.ts";

const noonMs = dayMs / 2;

/**
 * A time as an instant; or a day whose time nobody gave, as its noon, with the mark `time-unknown`. Noon is as far from
 * the days beside it as can be. Refuses what is neither, as the two do.
 */
export const dayOrTime: CellReader<Instant> = {
  isIdentifier: false,
  read(text, context) {
    if (!dayForm.safeParse(text).success) return localTime.read(text, context) as Instant;
    const noon = context.zone.firstInstantFrom((day.read(text, context) as number) * dayMs + noonMs);
    context.mark("time-unknown");
    return noon;
  },
};
