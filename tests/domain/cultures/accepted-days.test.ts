import { expect, it } from "vitest";
import { acceptedDays, dayFaults } from "../../../src/domain/cultures/accepted-days.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import type { Stay, WardStay } from "../../../src/domain/timeline/timeline.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";

// New York was five hours behind UTC in these days (IANA tz database).
const zone = zoneNamed("America/New_York");
const at = (text: string) => Date.parse(`${text}:00-05:00`);
const entry = { version: 1, voidReason: null, marks: [] };
const [emergency, medical, observed, unknown] = [1, 2, 3, 4];
const wards = new Map([
  [emergency, [{ fromDay: 0, setting: "outpatient" as const }]],
  [medical, [{ fromDay: 0, setting: "inpatient" as const }]],
  [
    observed,
    [
      { fromDay: 0, setting: "outpatient" as const },
      { fromDay: dayOf("2024-02-05"), setting: "inpatient" as const },
    ],
  ],
]);

type Way = readonly (readonly [wardId: number, from: string, to: string | null])[];
const stayOf = (way: Way, dischargedAt: string | null, voidReason: string | null = null): Stay => ({
  ...{ ...entry, id: 1, voidReason, patientId: 1, number: "S", disposition: null, spanFromMoves: false, catheters: [] },
  admittedAt: at(way[0]?.[1] ?? ""),
  dischargedAt: dischargedAt === null ? null : at(dischargedAt),
  wardStays: way.map(
    ([wardId, from, to], i): WardStay => ({
      ...{ ...entry, id: i + 1, wardId, bed: null, startAt: at(from), absenceAfter: null },
      endAt: to === null ? null : at(to),
    }),
  ),
});
const daysOf = (...stays: Stay[]) =>
  acceptedDays({ patientId: 1, stays }, { zone, wards }, dayOf("2024-02-25")).map(({ first, last }) => [
    textOf(first),
    last === null ? null : textOf(last),
  ]);

it.each<[string, Way, string | null, [string, string | null]]>([
  ["an inpatient ward from the start", [[medical, "2024-02-03T23:30", null]], null, ["2024-02-01", null]],
  [
    "a discharge",
    [[medical, "2024-02-03T08:00", "2024-02-06T23:30"]],
    "2024-02-06T23:30",
    ["2024-02-01", "2024-02-10"],
  ],
  [
    "the emergency department overnight",
    [
      [emergency, "2024-02-03T20:00", "2024-02-04T03:00"],
      [medical, "2024-02-04T03:00", null],
    ],
    null,
    ["2024-02-02", null],
  ],
  ["a ward that becomes one for inpatients", [[observed, "2024-02-03T20:00", null]], null, ["2024-02-03", null]],
  ["a ward that nobody described", [[unknown, "2024-02-03T20:00", null]], null, ["2024-02-01", null]],
  ["no inpatient ward", [[emergency, "2024-02-03T20:00", null]], null, ["2024-02-01", null]],
  [
    "an inpatient ward left at the midnight before it became one",
    [[observed, "2024-02-03T20:00", "2024-02-05T00:00"]],
    "2024-02-05T00:00",
    ["2024-02-01", "2024-02-09"],
  ],
])("days around %s", (_, way, dischargedAt, expected) => {
  expect(daysOf(stayOf(way, dischargedAt))).toEqual([expected]);
});

it.each([
  ["2024-02-04", "2024-02-01"],
  ["2024-02-05", "2024-02-03"],
])("on a ward that becomes one for inpatients on 5 February, seen on %s, begin on %s", (today, expected) => {
  const stay = stayOf([[observed, "2024-02-03T20:00", null]], null);
  const [accepted] = acceptedDays({ patientId: 1, stays: [stay] }, { zone, wards }, dayOf(today));
  expect(textOf(accepted?.first ?? 0)).toBe(expected);
});

it("are those of any standing stay, and the fault names no date", () => {
  const first = stayOf([[medical, "2024-02-03T08:00", "2024-02-06T08:00"]], "2024-02-06T08:00");
  const second = stayOf([[medical, "2024-02-20T08:00", null]], null);
  const voided = stayOf([[medical, "2024-01-03T08:00", null]], null, "Another patient's");
  const today = dayOf("2024-02-25");
  const accepted = acceptedDays({ patientId: 1, stays: [first, second, voided] }, { zone, wards }, today);
  const allowed = (day: string) => dayFaults(accepted, dayOf(day), "/day").length === 0;
  expect(["2024-01-31", "2024-02-01", "2024-02-10", "2024-02-11", "2024-02-17", "2024-02-18"].map(allowed)).toEqual([
    ...[false, true, true, false, false, true],
  ]);
  const [fault] = dayFaults(accepted, dayOf("2024-02-11"), "/day");
  expect(fault).toMatchObject({ code: "outside-surveillance-days", pointer: "/day" });
  expect(fault?.detail).not.toMatch(/\d{4}/);
  expect(dayFaults([], dayOf("2024-02-11"), "/day")[0]?.detail).toBe("The patient has no stay here.");
});
