import type { readRound as endpoint } from "../../../shared/api/rounds.ts";
import type { Day } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayMs, dayNumber, dayText, type Instant } from "../../domain/days/day-number.ts";
import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import type { NecessityPatient } from "../../domain/necessity/facts.ts";
import { type RoundRow, roundOf } from "../../domain/necessity/round.ts";
import { catheterVersions } from "../../store/catheters.ts";
import { facility } from "../../store/facilities.ts";
import { type Identifiers, patientsOnWards } from "../../store/round-patients.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";
import { necessityPatients, necessityRules } from "./necessity-facts.ts";

type Round = OutputOf<typeof endpoint>;

const caution =
  "This tool counts and reminds. Removal and insertion follow the unit's infection-control policy, the provider's order and your licensed practice.";

/**
 * A ward's catheters on a day with what is due, worked out as of now, or as of the end of a day that is over. The view
 * is recorded before it is answered. Refuses `in-the-future`.
 */
export function readRound(act: Act, input: { wardId: number; day?: Day | undefined }): Promise<Round> {
  const { facilityId } = act.actor;
  const { wardId } = input;
  return view(act, async (read, seen) => {
    const zone = zoneNamed((await facility(read, facilityId)).zone);
    const day = input.day === undefined ? zone.dayOf(act.now) : dayNumber(input.day);
    const { at, judgedAt } = roundInstants(zone, day, act.now);
    const identifiers = await patientsOnWards(read, facilityId, { wardIds: [wardId], at });
    // When a catheter was last seen is known without every note; only looking back needs them all.
    const patients = await necessityPatients(read, [...identifiers.keys()], { reviewsOnly: at === act.now });
    const rules = await necessityRules(read, facilityId, () => ({ first: day, last: day }), wardsOf(patients, wardId));
    const rows = roundOf({ wardId, day, at, judgedAt, patients, rules });
    const versions = await catheterVersions(
      read,
      rows.map((row) => row.catheterId),
    );
    const patientIds = rows.map((row) => row.patientId);
    seen({
      action: "view-round",
      patientIds,
      details: { wardId, day: dayText(day) },
    });
    return { wardId, day: dayText(day), at, rows: rows.map((row) => answer(row, identifiers, versions)), caution };
  });
}

/** The wards that the patients were ever on: what is asked of others does not matter here. */
function wardsOf(patients: readonly NecessityPatient[], wardId: number): number[] {
  const stays = patients.flatMap((patient) => patient.stays.flatMap((stay) => stay.wardStays));
  return [...new Set([wardId, ...stays.map((wardStay) => wardStay.wardId)])];
}

/** Now on the day that it is; the last instant of a day that is over, looked back on when it was. */
function roundInstants(zone: Zone, day: DayNumber, now: Instant): { at: Instant; judgedAt: Instant } {
  if (zone.dayOf(now) === day) return { at: now, judgedAt: now };
  const end = zone.firstInstantFrom((day + 1) * dayMs);
  if (end > now) refuse("in-the-future", "This day has not come yet.", { pointer: "/day" });
  return { at: end - 1, judgedAt: end };
}

function answer(row: RoundRow, identifiers: Identifiers, versions: ReadonlyMap<number, number>): Round["rows"][number] {
  const identifier = identifiers.get(row.patientId);
  const version = versions.get(row.catheterId);
  if (identifier === undefined || version === undefined)
    throw new Error(`catheter ${row.catheterId} has no patient here`);
  const states = row.states.map(({ state, reason, policy }) => ({ state, reason, policy }));
  const { noHour, indication, ...said } = row;
  const withoutHour = noHour.length === 0 ? {} : { noHour: [...noHour] };
  return {
    ...said,
    ...withoutHour,
    identifier,
    version,
    indication: indication?.code ?? null,
    age: { ...row.age },
    states,
  };
}
