import { type DayNumber, dayMs, dayText, type Instant } from "../days/day-number.ts";
import { holds } from "../timeline/ward-stretches.ts";
import type { CatheterPresence } from "./catheter-presence.ts";
import { confirmationAt } from "./confirmation.ts";
import type { NecessityRules } from "./facts.ts";
import { indicationInForce } from "./indication-in-force.ts";
import { thresholdOn } from "./threshold.ts";

/** The counted day of a catheter: a patient's day on a ward with it in place at the census. */
export interface CountedDay {
  readonly wardId: number;
  readonly day: DayNumber;
  readonly census: Instant;
  readonly now: Instant;
}

/** How one catheter-day stands to the policy of its ward. */
export interface CatheterDay {
  readonly catheterId: number;
  readonly pastThreshold: boolean;
  readonly indication: "accepted" | "outside" | "missing";
  readonly doubtful: boolean;
}

/**
 * One catheter-day of a patient. Of several catheters in place at the census the one that was put in last stands for the
 * day. The indication is the one in force when the day was over (or `now`), so that a reason written on the day counts
 * for it. The doubt is as known at `now`: a day is doubtful when its census lies so long after the last sight of the
 * catheter, and stops being doubtful once somebody sees it later. Throws a plain Error when none of the indwelling
 * `presences` was in place: the day was not counted by the same record.
 */
export function catheterDay(
  presences: readonly CatheterPresence[],
  { wardId, day, census, now }: CountedDay,
  rules: NecessityRules,
): CatheterDay {
  const presence = lastPutIn(presences.filter((one) => holds(one, census)));
  if (!presence) throw new Error(`no catheter was in place at the census of the catheter-day on ${dayText(day)}`);
  const { body } = rules.policyOn(wardId, day);
  const dayEnd = rules.zone.firstInstantFrom((day + 1) * dayMs) - 1;
  const indication = indicationInForce(presence, Math.min(now, dayEnd), body);
  const eligibilityDay = presence.eligibility.get(day) ?? null;
  const { doubtfulFrom } = confirmationAt(presence, now, body);
  return {
    catheterId: presence.catheter.id,
    pastThreshold: thresholdOn(eligibilityDay, indication?.code ?? null, body).daysPast > 0,
    indication: indication === null ? "missing" : indication.accepted ? "accepted" : "outside",
    doubtful: doubtfulFrom !== null && census >= doubtfulFrom,
  };
}

function lastPutIn(presences: readonly CatheterPresence[]): CatheterPresence | undefined {
  return presences.toSorted((a, b) => b.start - a.start || b.catheter.id - a.catheter.id)[0];
}
