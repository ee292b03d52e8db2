import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { identifiers } from "./alder-bay.ts";
import type { Desk } from "./desk.ts";
import { placing } from "./full-round.ts";

/**
 * November 2026 as known on 20 November at 10:00, worked out by hand. The census is at midnight; reviews are due from
 * eligibility day 2 on by 12:00, and on 3E by 09:00 from 20 November on.
 *
 * 3E  ALDER-1001, Nov 2 09:00 to Nov 5 10:00, no indication: catheter-days 3 to 5; due on 3 and 4, and not on 5, when
 *     it was out by the hour; neither made
 *     bed 2, from Nov 16 08:00: catheter-days 17 to 20; due on 17 to 20: kept on 17 at 11:00 in time, on 18 at 14:00
 *     late and for another reason, which has no threshold, on 19 not at all, on 20 overdue; checks on 17 (all kept),
 *     18 (one broken) and 19 (one item looked at)
 *     bed 3, from Nov 17 08:00, for a reason outside the policy: catheter-days 18 to 20; due on 18 to 20, never made;
 *     seen by nobody for 48 hours on 19 at 08:00, so doubtful at the census of 20
 *     bed 4, from Nov 18 08:00, perioperative: catheter-days 19 and 20, the latter day 3, past the threshold of 2; due
 *     on 19 and 20
 *     bed 5, no catheter, away from Nov 13 to 14, nobody said why
 *     counted by hand on Nov 2, 3 and today, which is not over: 17 of 19 days are missing
 * 4N  ALDER-1002, Nov 6 13:00 to Nov 9 09:00, no indication: catheter-days 7 to 9; due on 7 and 8; nobody counts by hand
 */
export const careFigures = {
  "3E": {
    ...{ catheter_days: 12, reviews_due: 11, reviews_in_time: 1, reviews_late: 1, reviews_missed: 6 },
    ...{ reviews_overdue: 3, past_threshold: 1, no_indication: 3, outside_policy: 3, not_confirmed: 1 },
    ...{ care_checks: 3, all_items_kept: 1, counts_missing: 17, absences_unknown: 1, bundle_compliance: 1 / 3 },
  },
  "4N": {
    ...{ catheter_days: 3, reviews_due: 2, reviews_in_time: 0, reviews_late: 0, reviews_missed: 2 },
    ...{ reviews_overdue: 0, past_threshold: 0, no_indication: 3, outside_policy: 0, not_confirmed: 0 },
    ...{ care_checks: 0, all_items_kept: 0, counts_missing: null, absences_unknown: 0, bundle_compliance: null },
  },
  total: {
    ...{ catheter_days: 15, reviews_due: 13, reviews_in_time: 1, reviews_late: 1, reviews_missed: 8 },
    ...{ reviews_overdue: 3, past_threshold: 1, no_indication: 6, outside_policy: 3, not_confirmed: 1 },
    ...{ care_checks: 3, all_items_kept: 1, counts_missing: 17, absences_unknown: 1, bundle_compliance: 1 / 3 },
  },
} as const;

/** Records it, and gives the catheters of 3E by what they are there for. */
export async function fillCare(desk: Desk) {
  const { place, insert, review } = placing(desk);
  const kept = await place("2", "2026-11-16T07:00", "2026-11-16T08:00");
  const third = await place("3", "2026-11-17T07:00");
  const outside = await insert(third.stayId, "2026-11-17T08:00", "incontinence");
  const past = await place("4", "2026-11-18T07:00", "2026-11-18T08:00");
  await review(kept.catheterId, "2026-11-17T11:00", "keep", "perioperative");
  await review(kept.catheterId, "2026-11-18T14:00", "keep", "retention-or-obstruction");
  await checkCare(desk, kept.catheterId);
  const away = await place("5", "2026-11-12T07:00");
  const absence = { leftAt: "2026-11-13T10:00", backAt: "2026-11-14T10:00", kind: null };
  await desk.ask(endpoints.recordAbsence, { stayId: away.stayId, ...absence });
  await setAndCount(desk);
  const { patients } = await desk.ask(endpoints.findPatients, { identifier: identifiers[0] });
  const { catheters } = await desk.ask(endpoints.readPatient, { patientId: patients[0]?.patientId ?? 0 });
  return { alder: catheters[0]?.catheterId, kept: kept.catheterId, outside, past: past.catheterId };
}

async function checkCare(desk: Desk, catheterId: number): Promise<void> {
  const all = Object.fromEntries(defaultPolicy.bundle.map(({ code }) => [code, "kept" as const]));
  const check = (at: string, items: Record<string, "kept" | "broken">) =>
    desk.ask(endpoints.recordCareCheck, { catheterId, at, items });
  await check("2026-11-17T10:00", all);
  await check("2026-11-18T10:00", { ...all, secured: "broken" });
  await check("2026-11-19T09:00", { "closed-system": "kept" });
}

async function setAndCount(desk: Desk): Promise<void> {
  const wardId = desk.hospital.wards["3E"];
  const body = { ...defaultPolicy, reviewDueAt: "09:00" };
  const fromDay = day.parse("2026-11-20");
  await desk.ask(endpoints.setPolicy, { wardId, fromDay, body, replaces: 0, reason: "Agreed" });
  for (const text of ["2026-11-02", "2026-11-03", "2026-11-20"]) {
    const count = { wardId, day: day.parse(text), patients: 3, catheters: 1, replaces: null };
    await desk.ask(endpoints.recordDailyCount, count);
  }
}
