import { describe, expect, it } from "vitest";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import { type CatheterPresence, catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import { type ReviewOfDay, type ReviewState, reviewOfDay } from "../../../src/domain/necessity/review-of-day.ts";
import { builtInPolicy } from "../../../src/domain/policy/policy-in-force.ts";
import { dayOf } from "../../reference/day-text.ts";
import { timelineOf, wardIds } from "../timeline/written.ts";
import { type Asked, hours, moved, reviewOf, ward } from "./asked-review.ts";
import { policyWith, rulesWith } from "./written-notes.ts";

const onA = ward.slice(0, 2);

/** The ward that owes the review and the time, or why none is owed. */
function owedText(asked: Asked): string {
  const { owed, notOwed } = reviewOf(asked);
  if (!owed) return String(notOwed);
  const letter = Object.entries(wardIds).find(([, id]) => id === owed.wardId)?.[0];
  const time = new Date(owed.dueAt).toLocaleTimeString("en-GB", { timeZone: "America/New_York", timeStyle: "short" });
  return `${letter} ${time}`;
}

describe("what makes a review due", () => {
  it.each<[title: string, asked: Asked, owed: string]>([
    ["the ward where the patient is at the hour", {}, "A 12:00"],
    ["the eligibility day that the policy names", { policy: policyWith({ reviewFromDay: 3 }) }, "A 12:00"],
    ["no eligibility day before it", { policy: policyWith({ reviewFromDay: 4 }) }, "too-early"],
    ["a removal after the hour", { lines: [...onA, "catheter 3: 05/09:00-07/12:01"], now: "08/10:00" }, "A 12:00"],
    ["no removal by the hour", { lines: [...onA, "catheter 3: 05/09:00-07/12:00"], now: "08/10:00" }, "not-there"],
    [
      "no removal between two instants, of which the first is before the hour",
      { lines: [...onA, "catheter 3: 05/09:00-07/11:00..07/15:00"], now: "08/10:00" },
      "not-there",
    ],
    [
      "an exchange before the hour, for the new catheter",
      { lines: [...onA, "catheter 9: 05/09:00-07/09:00", "catheter 3: 07/09:00-"] },
      "A 12:00",
    ],
    [
      "an exchange after the hour, not for the new catheter",
      { lines: [...onA, "catheter 9: 05/09:00-07/15:00", "catheter 3: 07/15:00-"], now: "07/16:00" },
      "not-there",
    ],
    ["no other kind", { lines: [...onA, "catheter 3: 05/09:00- suprapubic"] }, "other-kind"],
    [
      "no ward that is not for inpatients",
      { lines: ["stay 1: 05/08:00-", "ward stay 2: C 05/08:00-", "catheter 3: 05/09:00-"] },
      "not-there",
    ],
    ["no hour in a procedure area", { lines: moved("11:00", "A", "C") }, "not-there"],
    ["an hour before the procedure area", { lines: moved("12:01", "A", "C"), now: "07/13:00" }, "A 12:00"],
    [
      "an hour during a procedure with the bed held",
      { lines: ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-07/08:00 then procedure", "catheter 3: 05/09:00-"] },
      "A 12:00",
    ],
    [
      "no hour on leave",
      { lines: ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-07/08:00 then leave", "catheter 3: 05/09:00-"] },
      "not-there",
    ],
    [
      "no hour after the discharge",
      {
        lines: ["stay 1: 05/08:00-07/12:00", "ward stay 2: A 05/08:00-07/12:00", "catheter 3: 05/09:00-"],
        now: "08/10:00",
      },
      "not-there",
    ],
    ["the ward to which the patient was moved before the hour", { lines: moved("11:59") }, "B 12:00"],
    ["the ward from which the patient was moved after the hour", { lines: moved("12:01"), now: "07/13:00" }, "A 12:00"],
    ["the first of two hours that both find the patient", { lines: moved("12:00"), policy: hours }, "A 10:00"],
    [
      "the later hour, when the patient was moved between two and neither found them",
      { lines: moved("12:00", "B", "A"), policy: hours },
      "A 14:00",
    ],
    [
      "no later hour of another ward, when the ward's own hour found the patient without a catheter",
      {
        lines: [...moved("09:00", "B", "A").slice(0, 3), "catheter 9: 05/09:00-07/08:00", "catheter 3: 07/11:00-"],
        policy: hours,
        now: "07/11:30",
      },
      "not-there",
    ],
    [
      "no hour of a ward that reviews from a later day on, whatever another ward says",
      {
        lines: moved("09:00", "B", "A"),
        policy: (id) => (id === wardIds.B ? hours(id) : policyWith({ reviewDueAt: "10:00", reviewFromDay: 5 })),
      },
      "too-early",
    ],
    [
      "no hour of a ward to which the patient is moved on another day",
      {
        lines: [
          ...["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-07/09:00", "ward stay 4: C 07/09:00-07/12:00"],
          ...["ward stay 5: A 07/12:00-08/09:00", "ward stay 6: B 08/09:00-", "catheter 3: 05/09:00-"],
        ],
        policy: hours,
        now: "08/10:00",
      },
      "not-there",
    ],
    [
      "no hour of a ward that the patient had left for leave",
      {
        lines: [
          ...["stay 1: 05/08:00-", "ward stay 2: B 05/08:00-06/20:00 then leave"],
          ...["ward stay 4: A 07/11:00-", "catheter 3: 05/09:00-"],
        ],
        policy: hours,
        now: "07/12:00",
      },
      "not-there",
    ],
  ])("is %s", (_, asked, owed) => {
    expect(owedText(asked)).toBe(owed);
  });

  it("names the policy, and the ward whose hour it is", () => {
    const { owed } = reviewOf({ lines: moved("12:00", "B", "A"), policy: hours });
    expect(owed).toMatchObject({
      wardId: wardIds.A,
      policyWardId: wardIds.B,
      policy: { number: 1, wardId: wardIds.B },
    });
    expect(reviewOf({}).owed).toMatchObject({ wardId: wardIds.A, policyWardId: wardIds.A, policy: builtInPolicy });
  });
});

describe("the hour of a review where the clocks change", () => {
  /** When the review of a day is due in a zone by an hour, and its state just after and once the day is over. */
  function dueIn(name: string, day: string, reviewDueAt: string): { dueAt: string | null; states: ReviewState[] } {
    const zone = zoneNamed(name);
    const start = Date.parse(`${day}T00:00:00Z`) - 5 * 86_400_000;
    const rules = {
      ...rulesWith(policyWith({ reviewDueAt })),
      zone,
      dayExists: (n: number) => zone.startOfDay(n) !== null,
    };
    const stays = timelineOf(`stay 1: ${start}-`, `ward stay 2: A ${start}-`, `catheter 3: ${start}-`);
    const judge = (now: number): ReviewOfDay => {
      const [presence] = catheterPresences({ ...stays, notes: [] }, rules, now);
      return reviewOfDay(presence as CatheterPresence, dayOf(day), rules, now);
    };
    const dueAt = judge(start + 7 * 86_400_000).owed?.dueAt ?? null;
    const states = dueAt === null ? [] : [judge(dueAt).state, judge(dueAt + 1).state];
    return { dueAt: dueAt === null ? null : new Date(dueAt).toISOString(), states };
  }

  // Changes of the clocks: IANA tz database.
  it.each([
    { zone: "America/New_York", day: "2026-03-08", hour: "02:30", dueAt: "2026-03-08T07:00:00.000Z", after: "overdue" },
    { zone: "America/New_York", day: "2026-11-01", hour: "01:30", dueAt: "2026-11-01T05:30:00.000Z", after: "overdue" },
    {
      zone: "Australia/Lord_Howe",
      day: "2024-10-06",
      hour: "02:15",
      dueAt: "2024-10-05T15:30:00.000Z",
      after: "overdue",
    },
    // The clocks went from 23:30 to midnight: the hour is due at the very end of the day.
    { zone: "Asia/Pyongyang", day: "2018-05-04", hour: "23:45", dueAt: "2018-05-04T15:00:00.000Z", after: "missed" },
  ])("is the first instant at or after $hour on $day in $zone", ({ zone, day, hour, dueAt, after }) => {
    expect(dueIn(zone, day, hour)).toEqual({ dueAt, states: ["due", after] });
  });

  it("is none on a date that the zone skipped", () => {
    expect(dueIn("Pacific/Apia", "2011-12-30", "12:00")).toEqual({ dueAt: null, states: [] });
    expect(dueIn("Pacific/Apia", "2011-12-31", "12:00").dueAt).toBe("2011-12-30T22:00:00.000Z");
  });
});
