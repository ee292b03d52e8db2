import type { readSample as endpoint } from "../../../shared/api/samples.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { weeklySample } from "../../domain/counting/weekly-sample.ts";
import { weeklySampleDays } from "../../domain/counting/weekly-sample-days.ts";
import { weeklySampleEligibility } from "../../domain/counting/weekly-sample-eligibility.ts";
import { dayText, type Weekday } from "../../domain/days/day-number.ts";
import { monthDays, monthOf } from "../../domain/days/month.ts";
import { dailyCounts } from "../../store/daily-counts.ts";
import type { Act } from "../act.ts";
import { censusTaken } from "../months/census-taken.ts";
import { loadMonth } from "../months/load-month.ts";

const weekdayNumbers = { monday: 1, tuesday: 2, wednesday: 3, thursday: 4, friday: 5 } as const;

/**
 * A ward's catheter-days of a month, estimated from the counts made by hand on one weekday and the patient-days of the
 * record; and whether the ward may count so, by its last twelve months. Refuses `in-the-future`.
 */
export async function readSample(
  act: Act,
  { wardId, month, weekday: name, kind }: InputOf<typeof endpoint>,
): Promise<OutputOf<typeof endpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  const weekday: Weekday = weekdayNumbers[name];
  const counts = new Map(
    (await act.store.read((read) => dailyCounts(read, [wardId], days))).map((count) => [count.day, count]),
  );
  const weeks = weeklySampleDays({ month: days, weekday, counted: (day) => counts.has(day) });
  const used = weeks.flatMap((week) => (week.used === null ? [] : [counts.get(week.used)]));
  const sampled = used.flatMap((count) => (count ? [{ patients: count.patients, catheters: count.catheters }] : []));
  const facts = await loadMonth(act, { days, wardIds: [wardId] });
  const monthPatientDays = facts.wards[0]?.patientDays ?? 0;
  const sample = weeklySample({ sampled, monthPatientDays });
  const { verdict, sentence, conditions } = weeklySampleEligibility({
    pastCatheterDays: await pastCatheterDays(act, wardId, days.first),
    specialtyCareOrOncology: kind === "specialty-or-oncology",
    neonatal: kind === "neonatal",
    weekday,
  });
  return {
    ...{ wardId, month, verdict, sentence, conditions: [...conditions], monthPatientDays },
    weeks: weeks.map((week) => ({
      planned: dayText(week.planned),
      used: week.used === null ? null : dayText(week.used),
    })),
    sampledPatientDays: sample.sampledPatientDays,
    sampledCatheterDays: sample.sampledCatheterDays,
    sampledUtilization: sample.sampledUtilization.value,
    estimatedCatheterDays: sample.catheterDays.value,
  };
}

/** Catheter-days of the twelve months before a day, oldest first; null for a month in which nobody was on the ward. */
async function pastCatheterDays(act: Act, wardId: number, before: number): Promise<(number | null)[]> {
  const months = [];
  for (let last = before - 1; months.length < 12; last = monthDays(monthOf(last)).first - 1)
    months.unshift(monthOf(last));
  const first = monthDays(months[0] ?? monthOf(before)).first;
  const { wards } = await loadMonth(act, { days: { first, last: before - 1 }, wardIds: [wardId] });
  const sums = new Map<string, number>();
  for (const { day, catheterDays } of wards[0]?.days ?? [])
    sums.set(monthOf(day), (sums.get(monthOf(day)) ?? 0) + catheterDays);
  return months.map((month) => sums.get(month) ?? null);
}
