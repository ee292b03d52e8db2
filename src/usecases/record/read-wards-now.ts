import type { readWardsNow as endpoint } from "../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { RoundState } from "../../../shared/round-states.ts";
import { isOpenOn } from "../../domain/counting/ward-open.ts";
import { inForceOn } from "../../domain/counting/ward-setting.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { placeAt } from "../../domain/necessity/catheter-presence.ts";
import { type RoundRow, roundsOf } from "../../domain/necessity/round.ts";
import { stands } from "../../domain/timeline/timeline.ts";
import { wardStretches } from "../../domain/timeline/ward-stretches.ts";
import { patientsOnWards } from "../../store/round-patients.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";
import type { Reach } from "../reach.ts";
import { necessityPatients, necessityRules } from "./necessity-facts.ts";

type Answer = OutputOf<typeof endpoint>;

/**
 * The wards within reach as they are now: patients, and the rows of each ward's round by what they say. Figures only, so
 * no patient's record is seen.
 */
export function readWardsNow({ store, actor, now }: Act, { wardIds }: Reach): Promise<Answer> {
  const { facilityId } = actor;
  return store.read(async (read) => {
    const rules = await necessityRules(read, facilityId, (zone) => ({ first: zone.dayOf(now), last: zone.dayOf(now) }));
    const today = rules.zone.dayOf(now);
    const open = rules.wards.filter((ward) => (wardIds?.includes(ward.id) ?? true) && isOpenOn(ward, today));
    const here = await patientsOnWards(read, facilityId, { wardIds: open.map(({ id }) => id), at: now });
    const patients = await necessityPatients(read, [...here.keys()], { reviewsOnly: true });
    const present = groupedBy(
      patients.flatMap(({ stays }) =>
        stays.filter(stands).flatMap((stay) => placeAt(wardStretches(stay), now)?.wardId ?? []),
      ),
      (wardId) => wardId,
    );
    const rounds = roundsOf(
      { day: today, at: now, patients, rules },
      open.map(({ id }) => id),
    );
    const answers = open.map(({ id: wardId, code, settings }) => {
      const said = inForceOn(settings, today);
      const rows = rounds.get(wardId) ?? [];
      const count = present.get(wardId)?.length ?? 0;
      return {
        wardId,
        code,
        name: said?.name ?? code,
        setting: said?.setting ?? null,
        patients: count,
        ...counted(rows),
      };
    });
    return { at: now, day: dayText(today), wards: answers };
  });
}

function counted(rows: readonly RoundRow[]) {
  const having = (...states: RoundState[]) =>
    rows.filter((row) => row.states.some(({ state }) => states.includes(state))).length;
  return {
    catheters: rows.length,
    due: having("due"),
    overdue: having("overdue", "missed"),
    pastThreshold: having("past-threshold"),
    doubtful: having("doubtful"),
  };
}
