import type { readRound as endpoint } from "../../shared/api/rounds.ts";
import type { Day } from "../../shared/day.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { refuse } from "../../shared/problems.ts";
import { type DayNumber, dayMs, dayNumber, dayText, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { type RoundRow, roundOf } from "../domain/necessity/round.ts";
import { writeAudit } from "../store/audit.ts";
import { catheterVersions } from "../store/catheters.ts";
import { type Identifiers, patientsOnWard } from "../store/round-patients.ts";
import { type Act, recording } from "./act.ts";
import { necessityPatients, necessityRules } from "./necessity-facts.ts";

type Round = OutputOf<typeof endpoint>;

const caution =
  "This tool counts and reminds. Removal and insertion follow the unit's infection-control policy, the prescriber's order and your licensed practice.";

/**
 * A ward's catheters on a day with what is due, worked out as of now, or as of the end of a day that is over. The view
 * is recorded in the same transaction. Refuses `in-the-future`.
 */
export function readRound(act: Act, input: { wardId: number; day?: Day | undefined }): Promise<Round> {
  const { facilityId } = act.actor;
  const { wardId } = input;
  return act.store.tx(
    async (tx) => {
      const asked = input.day === undefined ? null : dayNumber(input.day);
      let day = 0;
      const rules = await necessityRules(tx, facilityId, (zone) => {
        day = asked ?? zone.dayOf(act.now);
        return { first: day, last: day };
      });
      const { at, judgedAt } = roundInstants(rules.zone, day, act.now);
      const identifiers = await patientsOnWard(tx, facilityId, { wardId, at });
      const patients = await necessityPatients(tx, [...identifiers.keys()]);
      const rows = roundOf({ wardId, day, at, judgedAt, patients, rules });
      const versions = await catheterVersions(
        tx,
        rows.map((row) => row.catheterId),
      );
      const patientIds = rows.map((row) => row.patientId);
      await writeAudit(tx, recording(act), {
        action: "view-round",
        patientIds,
        details: { wardId, day: dayText(day) },
      });
      return { wardId, day: dayText(day), at, rows: rows.map((row) => answer(row, identifiers, versions)), caution };
    },
    { snapshot: true },
  );
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
  return { ...row, identifier, version, indication: row.indication?.code ?? null, age: { ...row.age }, states };
}
