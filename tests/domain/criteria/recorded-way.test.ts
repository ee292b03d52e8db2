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
  expect(way.stays.map(({ id, admissionDay }) => [id, admissionDay])).toEqual([[3, dayOf("2024-03-01")]]);
  const placeless = recordedWay({ ...timeline, stays: [{ ...stay, wardStays: [] }] }, { zone, wards });
  expect(placeless.stays).toMatchObject([{ admissionDay: dayOf("2024-03-01"), wardTimes: [] }]);
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

const inpatient = (...from: string[]) =>
  new Map([[1, from.map((day) => ({ fromDay: dayOf(day), setting: "inpatient" as const }))]]);

it("a bed held during a procedure is time on its ward, leave is not", () => {
  const first = wardStay(1, 1, "2024-03-01T20:00", "2024-03-03T08:00");
  const second = wardStay(2, 1, "2024-03-05T08:00", null);
  const daysWith = (absenceAfter: WardStay["absenceAfter"]) => {
    const moved = { ...stay, catheters: [], wardStays: [{ ...first, absenceAfter }, second] };
    const way = recordedWay({ ...timeline, stays: [moved] }, { zone, wards: inpatient("2024-01-01") });
    return way.stays[0]?.wardTimes.map(({ start, end }) => [start.day, end?.day ?? null]);
  };
  const [one, three, five] = ["2024-03-01", "2024-03-03", "2024-03-05"].map(dayOf);
  expect(daysWith("leave")).toEqual([
    [one, three],
    [five, null],
  ]);
  expect(daysWith("procedure")).toEqual([
    [one, three],
    [three, five],
    [five, null],
  ]);
});

it("tells moments with their instants, and the day of discharge", () => {
  const moved = [wardStay(1, 1, "2024-03-01T20:00", "2024-03-04T09:00")];
  const gone = { ...stay, dischargedAt: at("2024-03-04T09:00"), catheters: [], wardStays: moved };
  const way = recordedWay({ ...timeline, stays: [stay, gone] }, { zone, wards: inpatient("2024-01-01") });
  expect(way.stays.map(({ dischargeDay }) => dischargeDay)).toEqual([null, dayOf("2024-03-04")]);
  expect(way.stays[1]?.wardTimes).toEqual([
    {
      wardId: 1,
      setting: "inpatient",
      start: { day: dayOf("2024-03-01"), at: at("2024-03-01T20:00") },
      end: { day: dayOf("2024-03-04"), at: at("2024-03-04T09:00") },
    },
  ]);
});

it.each<[string, readonly (readonly [string, "inpatient" | "outpatient"])[], unknown[]]>([
  ["on the first day", [["2024-03-01", "inpatient"]], [["inpatient", "2024-03-01", "2024-03-04"]]],
  [
    "on the last day",
    [
      ["2024-01-01", "outpatient"],
      ["2024-03-04", "inpatient"],
    ],
    [
      ["outpatient", "2024-03-01", "2024-03-03"],
      ["inpatient", "2024-03-04", "2024-03-04"],
    ],
  ],
  [
    "on the day after",
    [
      ["2024-01-01", "outpatient"],
      ["2024-03-05", "inpatient"],
    ],
    [["outpatient", "2024-03-01", "2024-03-04"]],
  ],
  [
    "to what it was",
    [
      ["2024-01-01", "inpatient"],
      ["2024-03-03", "inpatient"],
    ],
    [["inpatient", "2024-03-01", "2024-03-04"]],
  ],
])("a ward whose setting changes %s", (_title, dated, parts) => {
  const wards = new Map([[1, dated.map(([from, setting]) => ({ fromDay: dayOf(from), setting }))]]);
  const moved = [wardStay(1, 1, "2024-03-01T20:00", "2024-03-04T09:00")];
  const gone = { ...stay, dischargedAt: at("2024-03-04T09:00"), catheters: [], wardStays: moved };
  const [told] = recordedWay({ ...timeline, stays: [gone] }, { zone, wards }).stays;
  const days = told?.wardTimes.map(({ setting, start, end }) => [setting, start.day, end?.day]);
  expect(days).toEqual(parts.map((part) => (part as string[]).map((text, i) => (i === 0 ? text : dayOf(text)))));
});

it("ends a catheter at its removal, at the discharge, or not at all", () => {
  const left = { ...stay, dischargedAt: at("2024-03-05T09:00") };
  const [inserted, removed] = [at("2024-03-02T22:00"), at("2024-03-04T08:00")];
  const told = (changed: Partial<Catheter>, of: Stay = left) => {
    const one = { ...of, catheters: [{ ...catheter, ...changed }] };
    const [only] = recordedWay({ ...timeline, stays: [one] }, { zone, wards: new Map() }).catheters;
    return only;
  };
  const start = { day: dayOf("2024-03-02"), at: inserted };
  const base = { id: 5, kind: "indwelling-urethral", start, latestEndDay: null };
  expect(told({ removedAt: removed })).toEqual({ ...base, end: { day: dayOf("2024-03-04"), at: removed } });
  expect(told({ removedAt: null })).toEqual({ ...base, end: { day: dayOf("2024-03-05"), at: left.dischargedAt } });
  expect(told({ removedAt: null }, stay)).toEqual({ ...base, end: null });
  const found = { removedAt: null, removedAfterAt: at("2024-03-04T08:00") };
  expect(told(found)).toEqual({ ...base, end: { day: dayOf("2024-03-04"), at: null } });
  expect(told({ ...found, removedAt: removed })?.end).toEqual({ day: dayOf("2024-03-04"), at: removed });
});

it("a removal before or at the insertion keeps its own day, so that it can be told", () => {
  const midnight = at("2024-03-03T00:00");
  const endOf = (changed: Partial<Catheter>) =>
    recordedWay(
      { ...timeline, stays: [{ ...stay, catheters: [{ ...catheter, ...changed }] }] },
      { zone, wards: new Map() },
    ).catheters[0]?.end?.day;
  expect(endOf({ insertedAt: at("2024-03-04T09:00"), removedAt: midnight })).toBe(dayOf("2024-03-03"));
  expect(endOf({ insertedAt: midnight, removedAt: midnight })).toBe(dayOf("2024-03-03"));
  expect(endOf({ insertedAt: null, removedAt: stay.admittedAt })).toBe(dayOf("2024-03-01"));
  expect(endOf({ insertedAt: null, removedAt: midnight })).toBe(dayOf("2024-03-02"));
});
