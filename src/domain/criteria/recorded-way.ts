import type { WardSetting } from "../../../shared/vocabulary.ts";
import { type DatedSetting, inForceOn } from "../counting/ward-setting.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import { type Catheter, hasNoHour, type PatientTimeline, type Stay, stands } from "../timeline/timeline.ts";
import { countsForTheWard, standingCatheters, type WardStretch, wardStretches } from "../timeline/ward-stretches.ts";
import type {
  CatheterTime,
  Moment,
  SurveillanceStay,
  SurveillanceTimeline,
  WardTime,
} from "./surveillance-timeline.ts";

/** The zone of the facility, and what each ward is from which day on. */
export interface WayRules {
  readonly zone: Zone;
  readonly wards: ReadonlyMap<number, readonly DatedSetting[]>;
}

/**
 * The stays and catheters of a patient's record as determinations ask for them: entries that stand, on facility days. A
 * stretch that ends at midnight ends on the day before; a bed held during a procedure is time on its ward; a ward whose
 * setting changes while the patient is there is told in parts. A catheter ends with its stay at the latest.
 */
export function recordedWay(
  { stays }: PatientTimeline,
  rules: WayRules,
): Pick<SurveillanceTimeline, "stays" | "catheters"> {
  const standing = stays.filter(stands);
  return {
    stays: standing.map((stay) => stayOf(stay, rules)),
    catheters: standing.flatMap((stay) => standingCatheters(stay).map((one) => catheterOf(one, stay, rules.zone))),
  };
}

function stayOf(stay: Stay, rules: WayRules): SurveillanceStay {
  const wardTimes = wardStretches(stay)
    .filter(countsForTheWard)
    .flatMap((stretch) => partsOf(stretch, rules));
  return {
    id: stay.id,
    admissionDay: rules.zone.dayOf(stay.admittedAt),
    wardTimes,
    dischargeDay: stay.dischargedAt === null ? null : rules.zone.dayOf(stay.dischargedAt),
  };
}

/** One part for each setting that the ward had meanwhile. */
function partsOf({ wardId, start, end }: WardStretch, { zone, wards }: WayRules): WardTime[] {
  const dated = wards.get(wardId) ?? [];
  const settingOn = (day: DayNumber): WardSetting | null => inForceOn(dated, day)?.setting ?? null;
  const first: Moment = { day: zone.dayOf(start), at: start };
  const last: Moment | null = end === null ? null : lastMoment(start, end, zone);
  const changes = dated
    .map(({ fromDay }) => fromDay)
    .filter((day) => day > first.day && (last === null || day <= last.day) && settingOn(day) !== settingOn(day - 1));
  const begins = [first, ...changes.map((day): Moment => ({ day, at: null }))];
  return begins.map((begin, i) => {
    const next = begins[i + 1];
    return { wardId, setting: settingOn(begin.day), start: begin, end: next ? { day: next.day - 1, at: null } : last };
  });
}

function catheterOf(catheter: Catheter, stay: Stay, zone: Zone): CatheterTime {
  const { id, kind, insertedAt, removedAt, removedAfterAt, removedBeforeAt } = catheter;
  const startAt = hasNoHour(catheter, "insertedAt") ? null : insertedAt;
  const start = insertedAt === null ? null : { day: zone.dayOf(insertedAt), at: startAt };
  const from = insertedAt ?? stay.admittedAt;
  if (removedAt === null && removedAfterAt !== null) {
    // Only found out: no more is known of its hour and day than that it is between the two.
    const day = zone.dayOf(removedAfterAt);
    if (removedBeforeAt === null) return { id, kind, start, end: { day, at: null }, latestEndDay: null };
    const latest = zone.dayOf(removedBeforeAt);
    const end = { day, at: null, between: { after: removedAfterAt, before: removedBeforeAt } };
    return { id, kind, start, end, latestEndDay: latest > day ? latest : null };
  }
  const endAt = removedAt ?? stay.dischargedAt;
  return { id, kind, start, end: endAt === null ? null : lastMoment(from, endAt, zone), latestEndDay: null };
}

/** The last day that a stretch touches; one that ends before it begins keeps its day, so that it can be told. */
function lastMoment(start: Instant, end: Instant, zone: Zone): Moment {
  return { day: zone.dayOf(end > start ? end - 1 : end), at: end };
}
