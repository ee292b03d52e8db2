import { type Month, month as monthText } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import type { DayNumber } from "../days/day-number.ts";
import { monthOf, nextMonth } from "../days/month.ts";

/** As long as a comparison may be: charts of more months cannot be read. */
const mostMonths = 60;

/** The months of a period. Refuses `period-impossible`; `pointer` names the field that gave the first one. */
export function monthsBetween(from: Month, to: Month, pointer: string): Month[] {
  const months: Month[] = [];
  for (let month = from; month <= to && months.length <= mostMonths; month = nextMonth(month)) months.push(month);
  if (months.length === 0) refuse("period-impossible", `${from} is after ${to}.`, { pointer });
  if (months.length > mostMonths)
    refuse("period-impossible", `${from} to ${to} has more than ${mostMonths} months.`, { pointer });
  return months;
}

/** The month of a day and the eleven before it: what is compared when nobody says anything else. */
export function yearUpTo(day: DayNumber): { from: Month; to: Month } {
  const to = monthOf(day);
  const from = new Date(to);
  from.setUTCMonth(from.getUTCMonth() - 11);
  return { from: monthText.parse(from.toISOString().slice(0, 7)), to };
}
