import type { readEvents as endpoint } from "../../../shared/api/events.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { scopeIn } from "../../domain/cultures/family-of-wards.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { monthOf } from "../../domain/days/month.ts";
import { nonDefaultWords } from "../../domain/editions/readings.ts";
import { countedSentences, type EventFacts, eventsSheet } from "../../domain/reports/events.ts";
import { casesBetween } from "../../store/case-lists.ts";
import { readOnOf } from "../../store/chosen-readings.ts";
import { cultureRecords } from "../../store/culture-records.ts";
import { decisionsOf } from "../../store/decisions.ts";
import { determinationIn, type KeptDetermination } from "../../store/determinations.ts";
import { facility } from "../../store/facilities.ts";
import { patientsInReach } from "../../store/patients-in-reach.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import type { Read } from "../../store/store.ts";
import type { DayRange } from "../../store/ward-days.ts";
import { wardCodes } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { censusTaken } from "../months/census-taken.ts";
import { refuseLongPeriod } from "../period.ts";
import { type Reach, reachOf } from "../reach.ts";
import { inReachSince } from "../record/find-record.ts";
import { view } from "../view.ts";
import { determineByNow } from "./determine-by-now.ts";

/**
 * The infections of a period that belong to wards within reach, by date of event. Patients are named for who may see
 * them, and for nobody else; the view is recorded. Refuses `in-the-future`, `end-before-start`, `period-too-long`.
 */
export async function readEvents(
  act: Act,
  { first, last, wardIds }: DayRange & Reach,
): Promise<OutputOf<typeof endpoint>> {
  refuseLongPeriod({ first, last });
  await censusTaken(act, first, "/first");
  await determineByNow(act);
  const by = recording(act);
  return view(act, async (read, seen) => {
    const found = (await casesBetween(read, by.facilityId, { first, last })).filter(
      ({ outcome, wardId }) => outcome === "event" && wardId !== null && (wardIds?.includes(wardId) ?? true),
    );
    found.sort((a, b) => (a.eventDay ?? 0) - (b.eventDay ?? 0) || a.caseId - b.caseId);
    const named = await identifiersSeen(read, act, found);
    const codes = await wardCodes(read, by.facilityId);
    const scopes = await scopesOfFacility(read, by.facilityId);
    const readOn = await readOnOf(read, by.facilityId);
    const events: EventFacts[] = [];
    for (const one of found) {
      const { wardId, editionId, state } = one;
      const event = determinationIn(one)?.event;
      if (!event || wardId === null || state === "replaced") throw new Error(`case ${one.caseId} has no event`);
      const disagreement =
        state === "disagreed" ? ((await decisionsOf(read, one.caseId)).at(-1)?.reason ?? null) : null;
      const identifier = named.get(one.survivorId) ?? null;
      const isWatched = scopeIn(scopes, wardId, monthOf(event.dateOfEvent)) !== undefined;
      const nonDefault = nonDefaultWords(editionId, event.dateOfEvent, readOn);
      const of = { ward: codes.get(wardId) ?? "", editionId, event, state };
      events.push({ ...of, isWatched, disagreement, identifier, nonDefault });
    }
    const details = { first: dayText(first), last: dayText(last) };
    seen({ action: "view-events", patientIds: [...named.keys()], details });
    const { name } = await facility(read, by.facilityId);
    return {
      caseIds: found.map(({ caseId, survivorId }) => (named.has(survivorId) ? caseId : null)),
      counted: countedSentences(events),
      sheet: eventsSheet(events, { facility: name, first, last, asOf: act.now }),
    };
  });
}

/** The identifiers of those patients whom the person may see, by surviving patient. */
async function identifiersSeen(
  read: Read,
  act: Act,
  found: readonly KeptDetermination[],
): Promise<ReadonlyMap<number, string>> {
  const { facilityId } = act.actor;
  const reach = reachOf(act.actor, "see-patients");
  if (reach === null) return new Map();
  const patientIds = [...new Set(found.map(({ survivorId }) => survivorId))];
  const { wardIds } = reach;
  const since = inReachSince(act.now);
  const visible = wardIds ? await patientsInReach(read, facilityId, { patientIds, wardIds, since }) : patientIds;
  const records = await cultureRecords(read, visible);
  return new Map(records.map(({ patientId, identifier }) => [patientId, identifier]));
}
