import type { readWardMonth as endpoint } from "../../../shared/api/months.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { monthDays } from "../../domain/days/month.ts";
import { reports } from "../../domain/reports/index.ts";
import type { Act } from "../act.ts";
import { censusTaken } from "./census-taken.ts";
import { loadMonth } from "./load-month.ts";

/** A month of one ward, by day. Refuses `in-the-future`. */
export async function readWardMonth(
  act: Act,
  { wardId, month }: InputOf<typeof endpoint>,
): Promise<OutputOf<typeof endpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  const facts = await loadMonth(act, { days, wardIds: [wardId] });
  return { month, wardId, sheet: reports["ward-days"](facts) };
}
