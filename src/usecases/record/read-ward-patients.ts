import type { readWardPatients as endpoint } from "../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { hasNoHour, stands } from "../../domain/timeline/timeline.ts";
import { type LeftPatient, type PresentPatient, wardList } from "../../domain/timeline/ward-list.ts";
import { facility } from "../../store/facilities.ts";
import { type Identifiers, patientsOnWards } from "../../store/round-patients.ts";
import { loadTimelines } from "../../store/timelines.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";
import { inReachSince } from "./find-record.ts";

type Answer = OutputOf<typeof endpoint>;

/** Who is on a ward now, who came today, and who left it while its people may still complete the record; the view is recorded. */
export function readWardPatients(act: Act, { wardId }: { wardId: number }): Promise<Answer> {
  const { actor, now } = act;
  return view(act, async (read, seen) => {
    const zone = zoneNamed((await facility(read, actor.facilityId)).zone);
    const since = inReachSince(now);
    const identifiers = await patientsOnWards(read, actor.facilityId, { wardIds: [wardId], at: now, leftSince: since });
    const timelines = [...(await loadTimelines(read, [...identifiers.keys()])).values()];
    const { present, left } = wardList(timelines, { wardId, at: now, since, dayOf: (at) => zone.dayOf(at) });
    const patientIds = [...present, ...left].map(({ patientId }) => patientId);
    seen({ action: "view-ward-patients", patientIds, details: { wardId } });
    return {
      ...{ wardId, at: now, day: dayText(zone.dayOf(now)) },
      patients: present.map((one) => presentAnswer(one, identifiers)),
      left: left.map((one) => leftAnswer(one, identifiers)),
    };
  });
}

function who({ patientId, stay, wardStay, since }: PresentPatient | LeftPatient, identifiers: Identifiers) {
  const identifier = identifiers.get(patientId);
  if (identifier === undefined) throw new Error(`patient ${patientId} is listed without having been asked for`);
  return {
    ...{ patientId, identifier, since, bed: wardStay.bed },
    ...{ stayId: stay.id, stayVersion: stay.version, stayNumber: stay.number },
    ...{ wardStayId: wardStay.id, wardStayVersion: wardStay.version },
  };
}

/** The fields among these whose hour is not recorded; left out where there are none. */
function hourless(fields: Readonly<Record<string, boolean>>): { noHour?: string[] } {
  const noHour = Object.keys(fields).filter((field) => fields[field]);
  return noHour.length === 0 ? {} : { noHour };
}

/** Whether the hour is not recorded at which a patient came to the ward: a visit can begin with an earlier bed. */
function cameWithoutHour({ stay, since }: PresentPatient | LeftPatient): boolean {
  return stay.wardStays.some((one) => stands(one) && one.startAt === since && hasNoHour(one, "startAt"));
}

function presentAnswer(one: PresentPatient, identifiers: Identifiers): Answer["patients"][number] {
  const { cameFrom, arrivedToday, bedHeld, catheters } = one;
  return {
    ...who(one, identifiers),
    ...{ cameFrom, arrivedToday, bedHeld, ...hourless({ since: cameWithoutHour(one) }) },
    catheters: catheters.map((catheter) => {
      const { id, version, kind, insertedAt, inPlaceOnArrival } = catheter;
      const noHour = hourless({ insertedAt: hasNoHour(catheter, "insertedAt") });
      return { catheterId: id, version, kind, insertedAt, inPlaceOnArrival, ...noHour };
    }),
  };
}

function leftAnswer(one: LeftPatient, identifiers: Identifiers): Answer["left"][number] {
  const { leftAt, kind, absence, toWardId } = one;
  const noHour = hourless({ since: cameWithoutHour(one), leftAt: hasNoHour(one.wardStay, "endAt") });
  return { ...who(one, identifiers), leftAt, kind, absence, toWardId, ...noHour };
}
