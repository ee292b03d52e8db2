import { describe, expect, it } from "vitest";
import {
  closedPatientDays,
  openPatientDays,
  visitClosedPatientDays,
} from "../../../src/domain/counting/patient-days.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { at, march, oneWard, recordOf, rulesWith, textsOf } from "./march-records.ts";

// Rules: counts at the same time every day, and every catheter present at the count: CDC Patient Safety Component
// Manual, chapter 7 (from memory).
describe("the patient-days of stretches that are over", () => {
  it.each([
    { title: "at midnight, which begins a day", time: "00:00", lines: oneWard, rows: ["06 A", "07 A", "08 A"] },
    { title: "at midnight, which ends a day", time: "24:00", lines: oneWard, rows: ["05 A", "06 A", "07 A"] },
    { title: "at noon", time: "12:00", lines: oneWard, rows: ["05 A", "06 A", "07 A"] },
    { title: "at the minute of admission, yes", time: "08:00", lines: oneWard, rows: ["05 A", "06 A", "07 A", "08 A"] },
    { title: "at the minute of discharge, no", time: "10:00", lines: oneWard, rows: ["05 A", "06 A", "07 A"] },
    {
      title: "at a time that the clocks skip on the 10th",
      time: "02:30",
      lines: ["stay 1: 09/12:00-10/03:01", "ward stay 2: A 09/12:00-10/03:01"],
      rows: ["10 A"],
    },
    {
      title: "of a patient who left as the clocks had skipped it",
      time: "02:30",
      lines: ["stay 1: 09/12:00-10/03:00", "ward stay 2: A 09/12:00-10/03:00"],
      rows: [],
    },
    {
      title: "of two wards and a day in between",
      time: "00:00",
      lines: ["stay 1: 05/08:00-08/10:00", "ward stay 2: A 05/08:00-07/00:00", "ward stay 3: B 07/00:00-08/10:00"],
      rows: ["06 A", "07 B", "08 B"],
    },
    {
      title: "of two stays, the later one recorded first",
      time: "00:00",
      lines: [
        ...["stay 4: 07/20:00-09/09:00", "ward stay 5: B 07/20:00-09/09:00"],
        ...["stay 1: 05/08:00-07/10:00", "ward stay 2: A 05/08:00-07/10:00"],
      ],
      rows: ["06 A", "07 A", "08 B", "09 B"],
    },
    {
      title: "with the bed held during a procedure over midnight",
      time: "00:00",
      lines: [
        "stay 1: 05/08:00-07/10:00",
        "ward stay 2: A 05/08:00-05/22:00 then procedure",
        "ward stay 3: B 06/03:00-07/10:00",
      ],
      rows: ["06 A", "07 B"],
    },
    {
      title: "without the days of leave",
      time: "00:00",
      lines: [
        "stay 1: 05/08:00-09/10:00",
        "ward stay 2: A 05/08:00-06/22:00 then leave",
        "ward stay 3: A 08/03:00-09/10:00",
      ],
      rows: ["06 A", "09 A"],
    },
    {
      title: "without the days that nobody explained",
      time: "00:00",
      lines: ["stay 1: 05/08:00-09/10:00", "ward stay 2: A 05/08:00-06/22:00", "ward stay 3: A 08/03:00-09/10:00"],
      rows: ["06 A", "09 A"],
    },
    {
      title: "with the bed held until the discharge",
      time: "00:00",
      lines: ["stay 1: 05/08:00-08/10:00", "ward stay 2: A 05/08:00-06/22:00 then procedure"],
      rows: ["06 A", "07 A", "08 A"],
    },
    {
      title: "without the time before the first ward and in a procedure area",
      time: "00:00",
      lines: ["stay 1: 04/08:00-08/10:00", "ward stay 2: A 05/08:00-06/22:00", "ward stay 3: C 06/22:00-08/10:00"],
      rows: ["06 A"],
    },
    {
      title: "of a ward as long as it was an inpatient ward",
      time: "00:00",
      lines: ["stay 1: 18/08:00-22/10:00", "ward stay 2: B 18/08:00-22/10:00"],
      rows: ["19 B"],
    },
  ])("$title", ({ time, lines, rows }) => {
    expect(textsOf(closedPatientDays(recordOf(lines), at(time)))).toEqual(rows);
  });

  it("has both days of one midnight when the census moves from the end of a day to the beginning", () => {
    const rules = rulesWith(["2024-01-01", "24:00"], ["2024-03-08", "00:00"]);
    expect(textsOf(closedPatientDays(recordOf(oneWard), rules))).toEqual(["05 A", "06 A", "07 A", "08 A"]);
  });

  it("leaves out what was voided: a stay, or a ward stay in it", () => {
    const { stays, ...rest } = recordOf(oneWard);
    const rowsOf = (timeline: PatientTimeline) => closedPatientDays(timeline, at("00:00"));
    expect(rowsOf({ ...rest, stays: stays.map((s) => ({ ...s, voidReason: "twice" })) })).toEqual([]);
    const wardStays = (stay: (typeof stays)[number]) => stay.wardStays.map((w) => ({ ...w, voidReason: "twice" }));
    expect(rowsOf({ ...rest, stays: stays.map((s) => ({ ...s, wardStays: wardStays(s) })) })).toEqual([]);
  });

  it("says which stay made each day, also when days are visited one by one", () => {
    const visited: number[] = [];
    visitClosedPatientDays(recordOf(oneWard), at("00:00"), (day, _, stayId) => visited.push(day, stayId));
    const rows = closedPatientDays(recordOf(oneWard), at("00:00"));
    expect(visited).toEqual(rows.flatMap(({ day, stayId }) => [day, stayId]));
    expect(rows.map(({ stayId }) => stayId)).toEqual([1, 1, 1]);
  });
});

describe("the patient-days of stretches that last", () => {
  const lines = [
    "stay 1: 05/08:00-",
    "ward stay 2: A 05/08:00-07/09:00",
    "ward stay 3: B 07/09:00-",
    "catheter 4: 08/09:00-",
  ];

  it("are those of the last ward alone, up to now", () => {
    expect(textsOf(openPatientDays(recordOf(lines), at("00:00"), march("10", "12:00")))).toEqual([
      "08 B",
      "09 B+",
      "10 B+",
    ]);
    expect(textsOf(closedPatientDays(recordOf(lines), at("00:00")))).toEqual(["06 A", "07 A"]);
  });

  it("have a census at this very instant, and none a millisecond before it", () => {
    const now = march("09", "00:00");
    expect(textsOf(openPatientDays(recordOf(lines), at("00:00"), now))).toEqual(["08 B", "09 B+"]);
    expect(textsOf(openPatientDays(recordOf(lines), at("00:00"), now - 1))).toEqual(["08 B"]);
  });

  it.each([
    { title: "hold the bed during a procedure that lasts", absence: " then procedure", rows: ["08 A", "09 A"] },
    { title: "have no day of a leave that lasts", absence: " then leave", rows: [] },
    { title: "have no day that nobody explained", absence: "", rows: [] },
  ])("$title", ({ absence, rows }) => {
    const away = ["stay 1: 05/08:00-", `ward stay 2: A 05/08:00-07/09:00${absence}`];
    expect(textsOf(openPatientDays(recordOf(away), at("00:00"), march("09", "12:00")))).toEqual(rows);
  });

  it("are none before the patient came", () => {
    expect(
      openPatientDays(recordOf(["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-"]), at("00:00"), march("05", "09:00")),
    ).toEqual([]);
  });

  it.each(["00:00", "09:00", "24:00"])("are none of a stretch that begins after now, with the census at %s", (time) => {
    const ahead = recordOf(["stay 1: 05/09:00-", "ward stay 2: A 05/09:00-"]);
    for (const now of ["05/08:59", "04/23:00", "02/12:00"]) {
      const [day = "", clock = ""] = now.split("/");
      expect(openPatientDays(ahead, at(time), march(day, clock))).toEqual([]);
    }
    // The same stretch has its first day at the next census.
    expect(openPatientDays(ahead, at(time), march("06", "09:00"))).not.toEqual([]);
  });
});
