import type { CensusTime, Day } from "../../shared/day.ts";
import { mergePatients, unmergePatients } from "../../src/usecases/record/merge-patients.ts";
import { changeFacility } from "../../src/usecases/settings/change-facility.ts";
import { describeWard } from "../../src/usecases/wards/describe-ward.ts";
import { mergeWards } from "../../src/usecases/wards/merge-wards.ts";
import { localDay } from "./census-instants.ts";
import { hardCensusTimes, nextMonth } from "./hard-zones.ts";
import type { HospitalRecord, StayRecord } from "./read-record.ts";
import type { Draw } from "./scene.ts";

/** Two records turn out to be one person; seldom two who were here at one time. */
export const drawMerge: Draw = ({ record, chance, focus }) => {
  const survivors = record.patients.filter((p) => p.survivorId === p.id || chance.percent(3)).map((p) => p.id);
  const pairs = survivors.flatMap((fromId) =>
    survivors.filter((intoId) => intoId !== fromId).map((intoId) => ({ fromId, intoId })),
  );
  const wanted = pairs.filter(({ fromId, intoId }) => focus === null || fromId === focus || intoId === focus);
  const apart = wanted.filter(({ fromId, intoId }) => !wereHereTogether(record, fromId, intoId));
  const input = chance.maybe(chance.percent(85) ? apart : wanted);
  if (!input) return null;
  return { said: `merge ${JSON.stringify(input)}`, run: (act) => mergePatients(act, input) };
};

function wereHereTogether({ patients, stays }: HospitalRecord, ...ids: readonly number[]): boolean {
  const [a, b] = ids.map((id) => {
    const group = patients.filter((p) => p.survivorId === id).map((p) => p.id);
    return stays.filter((stay) => stay.voidKey === 0 && group.includes(stay.patientId));
  });
  const before = (one: StayRecord, other: StayRecord) =>
    one.dischargedAt !== null && one.dischargedAt <= other.admittedAt;
  return (a ?? []).some((one) => (b ?? []).some((other) => !before(one, other) && !before(other, one)));
}

/** Takes a merge back. */
export const drawUnmerge: Draw = ({ record, chance, focus }) => {
  const survivorOf = (id: number) => record.patients.find((p) => p.id === id)?.survivorId;
  const merges = record.merges.filter(({ fromId }) => focus === null || survivorOf(fromId) === focus);
  const mergeId = chance.maybe(merges)?.id;
  if (mergeId === undefined) return null;
  const reason = "two persons after all";
  return { said: `undo merge ${mergeId}`, run: (act) => unmergePatients(act, { mergeId, reason }) };
};

/** A ward gets another setting from a day on, which may be long past: often while somebody was there. */
export const drawWardSetting: Draw = ({ record, chance, start, now }) => {
  const lived = chance.maybe(record.wardStays.filter((w) => w.voidKey === 0));
  const ward = chance.maybe(
    record.wards.filter((w) => chance.percent(30) || lived === undefined || w.id === lived.wardId),
  );
  if (!ward) return null;
  const first = localDay(record.zone, chance.percent(50) ? (lived?.startAt ?? start) : start) - 1;
  const fromDay = first + chance.below(localDay(record.zone, Math.min(now, lived?.endAt ?? now)) + 3 - first);
  const setting = chance.pick(["inpatient", "inpatient", "inpatient", "outpatient", "procedure", null] as const);
  const reason = "rebuilt";
  const input = { wardId: ward.id, name: `Ward ${ward.code}`, type: null, setting, beds: null, fromDay, reason };
  return { said: `ward ${ward.id} is ${setting} from ${fromDay}`, run: (act) => describeWard(act, input) };
};

/** Two wards turn out to be one; seldom one that was merged before. */
export const drawWardMerge: Draw = ({ record, chance }) => {
  const wards = record.wards.filter((ward) => ward.mergedIntoId === null || chance.percent(5));
  const [from, into] = [chance.maybe(wards), chance.maybe(wards)];
  if (!from || !into) return null;
  const input = { wardId: from.id, intoWardId: into.id, reason: "one ward with two codes" };
  return { said: `merge ward ${from.id} into ${into.id}`, run: (act) => mergeWards(act, input) };
};

/** Another census time from the first day of next month. */
export const drawCensus: Draw = ({ record, chance, now }) => {
  const time = chance.pick(hardCensusTimes) as CensusTime;
  const fromDay = nextMonth(record.zone, now) as Day;
  return {
    said: `census at ${time} from ${fromDay}`,
    run: (act) => changeFacility(act, { census: { time, fromDay } }),
  };
};
