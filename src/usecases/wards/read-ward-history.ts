import type { readWardHistory as endpoint } from "../../../shared/api/wards.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { mergedInto } from "../../store/ward-merges.ts";
import { recordedSettings } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { knownWard } from "./known-ward.ts";

/** What a ward is and was, each from a day on, with who said so. Refuses `not-found`. */
export function readWardHistory(act: Act, { wardId }: { wardId: number }): Promise<OutputOf<typeof endpoint>> {
  return act.store.read(async (read) => {
    const { code, openedDay, closedDay, namedOnly } = await knownWard(read, act.actor.facilityId, wardId);
    const settings = (await recordedSettings(read, wardId)).map(({ id: _, fromDay, ...said }) => ({
      ...said,
      fromDay: dayText(fromDay),
    }));
    return {
      ...{ wardId, code, namedOnly, settings, merged: await mergedInto(read, wardId) },
      openedDay: openedDay === null ? null : dayText(openedDay),
      closedDay: closedDay === null ? null : dayText(closedDay),
    };
  });
}
