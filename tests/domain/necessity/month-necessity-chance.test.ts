import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closedPatientDays, openPatientDays, type PatientDayRow } from "../../../src/domain/counting/patient-days.ts";
import { catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import type { NecessityPatient } from "../../../src/domain/necessity/facts.ts";
import {
  type CatheterOnDay,
  type MonthNecessity,
  monthNecessity,
} from "../../../src/domain/necessity/month-necessity.ts";
import { reviewOfDay } from "../../../src/domain/necessity/review-of-day.ts";
import { at, march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { marchDay, patientFrom, policyWith, rulesWith } from "./written-notes.ts";

const [first, last] = [marchDay("08"), marchDay("18")];
const now = march("16", "13:00");
const counting = at("11:00");
const rules = rulesWith(policyWith({ thresholdDays: 3 }));

/** A time of March from the 5th on, as lines write it, by its hour; 02:15 on the 10th did not exist. */
function timeText(hourOfAll: number): string {
  const hour = hourOfAll === 5 * 24 + 2 ? hourOfAll + 1 : hourOfAll;
  return `${String(5 + Math.floor(hour / 24)).padStart(2, "0")}/${String(hour % 24).padStart(2, "0")}:15`;
}

const hours = fc.integer({ min: 0, max: 14 * 24 });
const noteText = fc.tuple(
  hours,
  fc.constantFrom(
    "review # keep for end-of-life",
    "review # keep for other",
    "review # ask",
    "review # remove",
    "confirmation #",
    "care-check # secured=kept",
  ),
);

/** A stay over wards A, B and C with up to three catheters and notes about the first of them. */
const patients = fc
  .record({
    moves: fc.uniqueArray(hours, { minLength: 2, maxLength: 5 }),
    wards: fc.array(fc.constantFrom("A", "B", "C"), { minLength: 4, maxLength: 4 }),
    absences: fc.array(fc.constantFrom("", " then procedure", " then leave"), { minLength: 4, maxLength: 4 }),
    lasts: fc.boolean(),
    catheters: fc.array(fc.tuple(hours, hours, fc.boolean()), { minLength: 1, maxLength: 3 }),
    notes: fc.array(noteText, { maxLength: 12 }),
  })
  .map(({ moves, wards, absences, lasts, catheters, notes }): NecessityPatient => {
    const times = moves.toSorted((a, b) => a - b);
    const [start = 0, end = 0] = [times[0], times.at(-1)];
    const stays = times.slice(0, -1).map((time, i) => {
      const until =
        i === times.length - 2 && lasts ? "" : timeText(Math.max(time, (times[i + 1] ?? end) - (absences[i] ? 1 : 0)));
      return `ward stay ${i + 10}: ${wards[i]} ${timeText(time)}-${until}${until === "" ? "" : absences[i]}`;
    });
    const put = catheters.map(([a, b, out], i) => {
      const [from, to] = [Math.max(start, Math.min(a, b)), Math.max(start, a, b)];
      return `catheter ${i + 3}: ${timeText(from)}-${out ? timeText(to) : ""}`;
    });
    const lines = [`stay 1: ${timeText(start)}-${lasts ? "" : timeText(end)}`, ...stays, ...put];
    return patientFrom(
      lines,
      notes.map(([time, text]) => text.replace("#", `3 ${timeText(time)}`)),
    );
  });

/** The patient-days of a record with a catheter, as a report has them. */
function catheterDaysOf(patient: NecessityPatient): PatientDayRow[] {
  const all = [...closedPatientDays(patient, counting), ...openPatientDays(patient, counting, now)];
  return all.filter(({ day, catheter }) => catheter && day >= first && day <= last);
}

function monthOf(patient: NecessityPatient, wardId: number): MonthNecessity {
  const catheterDays = catheterDaysOf(patient).filter((row) => row.wardId === wardId);
  const instants = new Map(Array.from(counting.census.days, (day, i) => [day, counting.census.instants[i] ?? 0]));
  return monthNecessity({
    ...{ wardId, first, last, now, rules, patients: [patient] },
    catheterDays: catheterDays.map(({ day }) => ({ patientId: 1, day })),
    censusAt: (day) => instants.get(day) ?? 0,
  });
}

const keys = (rows: readonly CatheterOnDay[]) => rows.map(({ catheterId, day }) => `${catheterId} ${day}`).sort();

describe("the figures of any record", () => {
  it("add up, and their days are some of the ward's catheter-days", () => {
    fc.assert(
      fc.property(patients, (patient) => {
        for (const wardId of Object.values(wardIds)) {
          const month = monthOf(patient, wardId);
          const { reviewsInTime, reviewsLate, reviewsMissed, reviewsOverdue } = month;
          expect(keys(month.reviewsDue)).toEqual(
            keys([reviewsInTime, reviewsLate, reviewsMissed, reviewsOverdue].flat()),
          );
          const { careChecksKept, careChecksBroken, careChecksIncomplete } = month;
          expect(keys(month.careChecks)).toEqual(keys([careChecksKept, careChecksBroken, careChecksIncomplete].flat()));
          const counted = catheterDaysOf(patient)
            .filter((row) => row.wardId === wardId)
            .map(({ day }) => day);
          const { daysPastThreshold, daysWithoutIndication, daysOutsidePolicy, daysDoubtful } = month;
          for (const rows of [daysPastThreshold, daysWithoutIndication, daysOutsidePolicy, daysDoubtful]) {
            const days = rows.map(({ day }) => day);
            expect(new Set(days).size).toBe(days.length);
            expect(days.filter((day) => !counted.includes(day))).toEqual([]);
          }
          const both = daysWithoutIndication.filter(({ day }) => daysOutsidePolicy.some((row) => row.day === day));
          expect(both).toEqual([]);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("give every review that is owed to exactly one ward", () => {
    let owed = 0;
    fc.assert(
      fc.property(patients, (patient) => {
        const everywhere = Object.values(wardIds).flatMap((wardId) => monthOf(patient, wardId).reviewsDue);
        const expected: CatheterOnDay[] = [];
        for (const presence of catheterPresences(patient, rules, now))
          for (let day = first; day <= last; day++) {
            const review = reviewOfDay(presence, day, rules, now);
            if (review.owed && review.owed.dueAt < now) expected.push({ catheterId: presence.catheter.id, day });
          }
        expect(keys(everywhere)).toEqual(keys(expected));
        owed += expected.length;
      }),
      { numRuns: 300 },
    );
    expect(owed).toBeGreaterThan(100);
  });
});
