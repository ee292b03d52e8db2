import type { readMonthCultures as endpoint } from "../../../shared/api/events.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { inForceOn } from "../../domain/counting/ward-setting.ts";
import { catheterOn } from "../../domain/cultures/glance.ts";
import { placeOf } from "../../domain/cultures/place-of.ts";
import { surveillanceOf } from "../../domain/cultures/surveillance-of.ts";
import { monthDays } from "../../domain/days/month.ts";
import { monthCulturesSheet } from "../../domain/reports/month-cultures.ts";
import { ofOwnWards } from "../../domain/reports/own-wards.ts";
import { casesCollected } from "../../store/case-lists.ts";
import { cultureRecords } from "../../store/culture-records.ts";
import { facility } from "../../store/facilities.ts";
import type { Read } from "../../store/store.ts";
import type { DayRange } from "../../store/ward-days.ts";
import { wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { loadWayRules } from "../cultures/way-rules.ts";
import type { Reach } from "../reach.ts";
import { censusTaken } from "./census-taken.ts";

/** How far from a culture a sign may lie that was a reason for it: as far as an infection window reaches. */
const signDays = 3;

/** A urine culture, as far as this report needs it. */
interface Culture {
  readonly placeId: number | null;
  readonly ofCatheter: boolean;
  readonly hasSign: boolean;
}

/** A month's urine cultures by ward within reach, and those of catheters without a sign. Refuses `in-the-future`. */
export async function readMonthCultures(
  act: Act,
  { month, wardIds }: { readonly month: Month } & Reach,
): Promise<OutputOf<typeof endpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  return act.store.read(async (read) => {
    const { facilityId } = act.actor;
    const cultures = await culturesOf(read, act, days);
    const found = (await wards(read, facilityId, wardIds))
      .map((ward) => ({ ward, own: cultures.filter(({ placeId }) => placeId === ward.id) }))
      .filter(({ own }) => own.length > 0);
    const rows = found.map(({ ward, own }) => {
      const ofCatheters = own.filter(({ ofCatheter }) => ofCatheter);
      const withoutSign = ofCatheters.filter(({ hasSign }) => !hasSign).length;
      const name = inForceOn(ward.settings, days.last)?.name ?? ward.code;
      return { ward: ward.code, name, cultures: own.length, ofCatheters: ofCatheters.length, withoutSign };
    });
    const { name } = await facility(read, facilityId);
    const sheet = monthCulturesSheet(rows, { facility: name, ...days, asOf: act.now });
    return { month, wardIds: found.map(({ ward }) => ward.id), sheet: wardIds ? ofOwnWards(sheet) : sheet };
  });
}

async function culturesOf(read: Read, act: Act, days: DayRange): Promise<Culture[]> {
  const { facilityId } = act.actor;
  const rules = await loadWayRules(read, facilityId);
  const cases = await casesCollected(read, facilityId, days);
  const records = await cultureRecords(read, [...new Set(cases.map(({ survivorId }) => survivorId))]);
  return records.flatMap((record) => {
    const timeline = surveillanceOf(record, rules, rules.zone.dayOf(act.now));
    const present = timeline.signs.filter(({ finding }) => finding === "present").map(({ when }) => when.day);
    return timeline.specimens.flatMap(({ kind, status, collected }): Culture[] => {
      const { day } = collected;
      if (kind !== "urine" || status === "withdrawn" || day < days.first || day > days.last) return [];
      const ofCatheter = catheterOn(timeline, day) || catheterOn(timeline, day - 1);
      const hasSign = present.some((one) => Math.abs(one - day) <= signDays);
      return [{ placeId: placeOf(timeline, collected), ofCatheter, hasSign }];
    });
  });
}
