import type { listDestinations as endpoint } from "../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { isOpenOn } from "../../domain/counting/ward-open.ts";
import { dayNumber } from "../../domain/days/day-number.ts";
import type { Act } from "../act.ts";
import { wardsToday } from "../wards/list-wards.ts";

/** Every ward of the facility that is open today: a patient can be moved to any of them, whoever records it. */
export async function listDestinations(act: Act): Promise<OutputOf<typeof endpoint>> {
  const { today, wards } = await wardsToday(act);
  return {
    wards: wards
      .filter(({ closedDay }) => isOpenOn({ closedDay: closedDay === null ? null : dayNumber(closedDay) }, today))
      .map(({ wardId, code, name, setting }) => ({ wardId, code, name, setting })),
  };
}
