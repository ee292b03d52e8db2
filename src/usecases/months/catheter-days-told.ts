import type { readCatheter as endpoint } from "../../../shared/api/catheters.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { type DayNumber, daysFromTo, dayText } from "../../domain/days/day-number.ts";
import { type CatheterPresence, catheterPresences } from "../../domain/necessity/catheter-presence.ts";
import type { NecessityPatient } from "../../domain/necessity/facts.ts";
import { reviewOfDay } from "../../domain/necessity/review-of-day.ts";
import { countsForTheWard } from "../../domain/timeline/ward-stretches.ts";
import type { Read } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { necessityRules } from "../record/necessity-facts.ts";

type Story = OutputOf<typeof endpoint>;
type Told = Pick<Story, "wards" | "days" | "daysLeftOut">;

/** Longer stories are cut at their beginning: more than a year of days is more than a picture can show. */
const mostDays = 400;

/**
 * Where a catheter was in place, and its days with the state of each day's review: the same reviews that the round shows
 * and the month of care counts. A voided catheter was never in place.
 */
export async function catheterDaysTold(
  read: Read,
  { actor: { facilityId }, now }: Act,
  { patient, catheterId }: { patient: NecessityPatient; catheterId: number },
): Promise<Told> {
  const first = Math.min(...patient.stays.map((stay) => stay.admittedAt), now);
  const rules = await necessityRules(read, facilityId, (zone) => ({ first: zone.dayOf(first), last: zone.dayOf(now) }));
  const presence = catheterPresences(patient, rules, now).find(({ catheter }) => catheter.id === catheterId);
  if (!presence) return { wards: [], days: [], daysLeftOut: 0 };
  const all = daysOf(presence, rules.dayExists);
  const days = all.slice(-mostDays).map((day) => {
    const { state, owed, eligibilityDay } = reviewOfDay(presence, day, rules, now);
    const { wardId = null, dueAt = null } = owed ?? {};
    return { day: dayText(day), wardId, eligibilityDay, review: state, dueAt };
  });
  return { wards: wardsOf(presence), days, daysLeftOut: all.length - days.length };
}

function daysOf({ days: { first, last } }: CatheterPresence, dayExists: (day: DayNumber) => boolean): DayNumber[] {
  return daysFromTo(first, last).filter(dayExists);
}

/** The wards that had the patient while it was in; a bed that is held during a procedure is the ward's. */
function wardsOf({ places, start, end }: CatheterPresence): Told["wards"] {
  const wards: Told["wards"] = [];
  for (const place of places) {
    const from = Math.max(place.start, start);
    const to = place.end === null ? end : Math.min(place.end, end ?? place.end);
    if (!countsForTheWard(place) || (to !== null && to <= from)) continue;
    const last = wards.at(-1);
    if (last?.wardId === place.wardId && last.endAt === from) last.endAt = to;
    else wards.push({ wardId: place.wardId, startAt: from, endAt: to });
  }
  return wards;
}
