import { expect, it } from "vitest";
import { recordedWay } from "../../../src/domain/criteria/index.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import type { Catheter, PatientTimeline, Stay, WardStay } from "../../../src/domain/timeline/timeline.ts";
import { dayOf } from "../../reference/day-text.ts";

// New York was five hours behind UTC in these days, until 10 March 2024 (IANA tz database).
const zone = zoneNamed("America/New_York");
const at = (text: string) => Date.parse(`${text}:00-05:00`);
const entry = { version: 1, voidReason: null, marks: [] };

const catheter: Catheter = {
  ...entry,
  id: 5,
  number: null,
  kind: "indwelling-urethral",
  insertedAt: at("2024-03-02T22:00"),
  inPlaceOnArrival: false,
  removedAt: at("2024-03-04T00:00"),
  removedAfterAt: null,
  removedBeforeAt: null,
  lastSeenAt: null,
  indication: null,
  sizeFr: null,
  balloonMl: null,
};
const wardStay = (id: number, wardId: number, from: string, to: string | null): WardStay => {
  const endAt = to === null ? null : at(to);
  return { ...entry, id, wardId, bed: null, startAt: at(from), endAt, absenceAfter: null };
};
const stay: Stay = {
  ...entry,
  id: 3,
  patientId: 1,
  number: "S1",
  admittedAt: at("2024-03-01T20:00"),
  dischargedAt: null,
  disposition: null,
  spanFromMoves: false,
  wardStays: [wardStay(1, 1, "2024-03-01T20:00", "2024-03-03T00:00"), wardStay(2, 2, "2024-03-03T00:00", null)],
  catheters: [catheter, { ...catheter, id: 6, voidReason: "another patient's" }],
};
const timeline: PatientTimeline = { patientId: 1, stays: [stay, { ...stay, id: 4, voidReason: "twice" }] };
const wards = new Map([
  [1, [{ fromDay: 0, setting: "outpatient" as const }]],
  [
    2,
    [
      { fromDay: dayOf("2024-01-01"), setting: "outpatient" as const },
      { fromDay: dayOf("2024-03-05"), setting: "inpatient" as const },
    ],
  ],
]);

it("tells local days, ends at midnight on the day before, and parts where the ward became another", () => {
  const way = recordedWay(timeline, { zone, wards });
  expect(way.stays.map(({ id }) => id)).toEqual([3]);
  const told = way.stays[0]?.wardTimes.map(({ wardId, setting, start, end }) => [
    wardId,
    setting,
    start.day,
    end?.day ?? null,
  ]);
  const days = ["2024-03-01", "2024-03-02", "2024-03-03", "2024-03-04", "2024-03-05"].map(dayOf);
  expect(told).toEqual([
    [1, "outpatient", days[0], days[1]],
    [2, "outpatient", days[2], days[3]],
    [2, "inpatient", days[4], null],
  ]);
  expect(way.catheters.map(({ id, start, end }) => [id, start?.day, end?.day])).toEqual([[5, days[1], days[2]]]);
});

it("keeps open what nobody knows of a catheter: its insertion, and a removal that was found out", () => {
  const found = { removedAt: null, removedAfterAt: at("2024-03-04T09:00"), removedBeforeAt: at("2024-03-06T09:00") };
  const open = { ...stay, catheters: [{ ...catheter, ...found, insertedAt: null, inPlaceOnArrival: true }] };
  const way = recordedWay({ ...timeline, stays: [open] }, { zone, wards: new Map() });
  expect(way.catheters).toMatchObject([
    { start: null, end: { day: dayOf("2024-03-04"), at: null }, latestEndDay: dayOf("2024-03-06") },
  ]);
  expect(way.stays[0]?.wardTimes.map(({ setting }) => setting)).toEqual([null, null]);
});
