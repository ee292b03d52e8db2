import { describe, expect, it } from "vitest";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import {
  ageOn,
  type CatheterPresence,
  catheterPresences,
  placeAt,
} from "../../../src/domain/necessity/catheter-presence.ts";
import { holds } from "../../../src/domain/timeline/ward-stretches.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { marchDay, patientFrom, rulesWith } from "./written-notes.ts";

const rules = rulesWith();
const ward = ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-"];

function presencesOf(lines: readonly string[], now = march("12", "10:00"), notes: readonly string[] = []) {
  return catheterPresences(patientFrom(lines, notes), rules, now);
}

/** The only catheter of a record. */
function presenceOf(lines: readonly string[], now?: number, notes?: readonly string[]): CatheterPresence {
  const [presence, another] = presencesOf(lines, now, notes);
  if (!presence || another) throw new Error("one catheter was meant");
  return presence;
}

const daysText = ({ days }: CatheterPresence) => `${textOf(days.first).slice(8)}-${textOf(days.last).slice(8)}`;
const eligibilityText = ({ eligibility }: CatheterPresence) =>
  [...eligibility].map(([day, number]) => `${textOf(day).slice(8)}:${number}`).join(" ");

describe("the facility days of a catheter", () => {
  it.each([
    { title: "up to now while it is in", catheter: "05/09:00-", days: "05-12" },
    { title: "up to its removal", catheter: "05/23:59-07/00:01", days: "05-07" },
    { title: "without the day that begins with the removal", catheter: "05/09:00-07/00:00", days: "05-06" },
    { title: "its own day when it was in and out in a minute", catheter: "07/00:00-07/00:00", days: "07-07" },
    {
      title: "up to the first of two instants between which it was removed",
      catheter: "05/09:00-07/10:00..09/10:00",
      days: "05-07",
    },
    { title: "up to now when the removal lies ahead", catheter: "05/09:00-20/10:00", days: "05-12" },
  ])("are those it was in place for any part: $title", ({ catheter, days }) => {
    expect(daysText(presenceOf([...ward, `catheter 3: ${catheter}`]))).toBe(days);
  });

  it("end with the stay", () => {
    const lines = ["stay 1: 05/08:00-08/10:00", "ward stay 2: A 05/08:00-08/10:00", "catheter 3: 06/08:00-"];
    const presence = presenceOf(lines);
    expect(daysText(presence)).toBe("06-08");
    expect([march("08", "09:59"), march("08", "10:00")].map((at) => holds(presence, at))).toEqual([true, false]);
  });

  it("stand in order also where the clocks went back over midnight", () => {
    // IANA tz database: America/St_Johns went back from 2010-11-07 00:01 to 2010-11-06 23:01, at 02:31 UTC.
    const zone = zoneNamed("America/St_Johns");
    const [start, now] = [Date.parse("2010-11-07T02:30:30Z"), Date.parse("2010-11-07T02:45:00Z")];
    expect([zone.dayOf(start), zone.dayOf(now)].map(textOf)).toEqual(["2010-11-07", "2010-11-06"]);
    const lines = [`stay 1: ${start}-`, `ward stay 2: A ${start}-`, `catheter 3: ${start}-`];
    const [presence] = catheterPresences(patientFrom(lines), { ...rules, zone }, now);
    expect(presence?.days).toEqual({ first: dayOf("2010-11-06"), last: dayOf("2010-11-07") });
  });

  it("are not asked of a catheter or stay that was voided, or that has not begun", () => {
    const patient = patientFrom([...ward, "catheter 3: 06/08:00-"]);
    const [stay] = patient.stays;
    if (!stay) throw new Error("the record has a stay");
    const voided = { ...stay, catheters: stay.catheters.map((c) => ({ ...c, voidReason: "wrong" })) };
    expect(catheterPresences({ ...patient, stays: [voided] }, rules, march("12", "10:00"))).toEqual([]);
    const whole = { ...stay, voidReason: "wrong" };
    expect(catheterPresences({ ...patient, stays: [whole] }, rules, march("12", "10:00"))).toEqual([]);
    expect(catheterPresences(patient, rules, march("06", "07:59"))).toEqual([]);
    expect(catheterPresences(patient, rules, march("06", "08:00"))).toHaveLength(1);
  });
});

describe("the eligibility days", () => {
  // CDC Patient Safety Component Manual, chapter 7: removal and reinsertion without a full day off goes on.
  it("go on across an exchange and are the same for both catheters", () => {
    const [one, two] = presencesOf([...ward, "catheter 3: 06/08:00-08/09:00", "catheter 4: 09/20:00-"]);
    expect(one && eligibilityText(one)).toBe("06:1 07:2 08:3 09:4 10:5 11:6 12:7");
    expect(two?.eligibility).toBe(one?.eligibility);
  });

  it("begin again after a full day off, and after a full day away from inpatient wards", () => {
    const [one] = presencesOf([...ward, "catheter 3: 06/08:00-07/09:00", "catheter 4: 09/20:00-"]);
    expect(one && eligibilityText(one)).toBe("06:1 07:2 09:1 10:2 11:3 12:4");
    const away = ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-06/10:00 then leave", "ward stay 4: A 08/10:00-"];
    expect(eligibilityText(presenceOf([...away, "catheter 3: 05/08:00-"]))).toBe("05:1 06:2 08:1 09:2 10:3 11:4 12:5");
  });

  it("go on while the bed is held during a procedure", () => {
    const held = ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-06/10:00 then procedure", "ward stay 4: A 08/10:00-"];
    expect(eligibilityText(presenceOf([...held, "catheter 3: 05/08:00-"], march("08", "12:00")))).toBe(
      "05:1 06:2 07:3 08:4",
    );
  });

  it("need an inpatient ward, and go on from one stay to the next", () => {
    const moved = ["stay 1: 05/08:00-", "ward stay 2: C 05/08:00-07/10:00", "ward stay 4: A 07/10:00-"];
    expect(eligibilityText(presenceOf([...moved, "catheter 3: 05/09:00-"], march("08", "12:00")))).toBe("07:1 08:2");
    const twice = [
      ...["stay 1: 05/08:00-06/10:00", "ward stay 2: A 05/08:00-06/10:00", "catheter 3: 05/09:00-"],
      ...["stay 5: 06/18:00-", "ward stay 6: A 06/18:00-", "catheter 7: arrived ?-"],
    ];
    const [, second] = presencesOf(twice, march("07", "12:00"));
    expect(second && eligibilityText(second)).toBe("05:1 06:2 07:3");
  });

  it("are none for kinds that are not counted", () => {
    const presence = presenceOf([...ward, "catheter 3: 06/08:00- suprapubic"]);
    expect(presence.eligibility.size).toBe(0);
    expect(daysText(presence)).toBe("06-12");
  });
});

describe("the age of a catheter", () => {
  const arrived = ["stay 1: 05/08:00-", "ward stay 2: C 05/08:00-07/10:00", "ward stay 4: A 07/10:00-"];
  it.each([
    { title: "from its insertion", lines: [...ward, "catheter 3: 06/08:00-"], age: { days: 7, atLeast: false } },
    {
      title: "from an insertion before the stay",
      lines: [...ward, "catheter 3: arrived 01/08:00-"],
      age: { days: 12, atLeast: false },
    },
    {
      title: "at least from the first inpatient day when nobody knows the insertion",
      lines: [...arrived, "catheter 3: arrived ?-"],
      age: { days: 6, atLeast: true },
    },
  ])("is counted $title", ({ lines, age }) => {
    expect(ageOn(presenceOf(lines), marchDay("12"), rules)).toEqual(age);
  });

  it("is counted from the admission on days before the first inpatient one", () => {
    const presence = presenceOf([...arrived, "catheter 3: arrived ?-"]);
    expect(ageOn(presence, marchDay("06"), rules)).toEqual({ days: 2, atLeast: true });
    const never = presenceOf(["stay 1: 05/08:00-", "ward stay 2: C 05/08:00-", "catheter 3: arrived ?-"]);
    expect(ageOn(never, marchDay("06"), rules)).toEqual({ days: 2, atLeast: true });
  });
});

describe("the notes of a catheter", () => {
  it("are those that stand, in the order in which things happened, with reviews by day", () => {
    const presence = presenceOf([...ward, "catheter 3: 06/08:00-"], undefined, [
      "review 3 08/10:00 keep for other",
      "confirmation 3 07/23:00",
      "review 3 08/09:00 ask",
      "review 3 08/08:00 keep for other voided",
      "review 9 08/08:00 keep for other",
      "review 3 09/00:00 remove",
      "confirmation 3 07/23:00",
    ]);
    expect(presence.notes.map(({ id }) => id)).toEqual([2, 7, 3, 1, 6]);
    expect(presence.reviews.map(({ id }) => id)).toEqual([3, 1, 6]);
    const onDays = [...presence.reviewsOn].map(([day, list]) => `${textOf(day).slice(8)}:${list.map(({ id }) => id)}`);
    expect(onDays).toEqual(["08:3,1", "09:6"]);
  });
});

describe("the place of a patient", () => {
  const lines = [
    ...[
      "stay 1: 05/08:00-",
      "ward stay 2: A 05/08:00-06/10:00 then procedure",
      "ward stay 4: B 06/18:00-07/10:00 then leave",
    ],
    ...["ward stay 5: A 08/10:00-09/10:00", "catheter 3: 05/09:00-"],
  ];
  it.each<[day: string, time: string, ward: keyof typeof wardIds | null]>([
    ["05", "07:59", null],
    ["05", "08:00", "A"],
    ["06", "09:59", "A"],
    ["06", "10:00", "A"],
    ["06", "17:59", "A"],
    ["06", "18:00", "B"],
    ["07", "10:00", null],
    ["08", "10:00", "A"],
    ["09", "10:00", null],
  ])("on %s at %s is %s", (day, time, letter) => {
    expect(placeAt(presenceOf(lines).places, march(day, time))?.wardId ?? null).toBe(letter && wardIds[letter]);
  });
});
