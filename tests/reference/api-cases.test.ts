import { expect, it } from "vitest";
import { z } from "zod";
import { endpoints } from "../../shared/api/index.ts";
import { type Day, type Month, month } from "../../shared/day.ts";
import type { CatheterKind } from "../../shared/vocabulary.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type ApiWard, openApiWard } from "./api-ward.ts";
import { dayOf, textOf } from "./day-text.ts";
import { type ReferenceCase, readCases, titleOf } from "./read-data.ts";

const counting = readCases("counting-cases.json");
const named = (...ids: string[]) =>
  ids.map((id) => {
    const one = counting.find((found) => found.id === id);
    if (!one) throw new Error(`there is no case ${id}`);
    return [titleOf(one), one] as const;
  });

const intervals = z.array(z.object({ in: z.string(), out: z.string() }));
const numbers = z.array(z.number());

/** The sum spread over days, as evenly as whole numbers go. */
function spread(sum: number, days: number): number[] {
  return Array.from({ length: days }, (_, i) => Math.floor(((i + 1) * sum) / days) - Math.floor((i * sum) / days));
}

onEachDatabase("reference cases through the API", (fresh) => {
  async function onWard(work: (ward: ApiWard) => Promise<void>): Promise<void> {
    const ward = await openApiWard(await fresh());
    try {
      await work(ward);
    } finally {
      await ward.close();
    }
  }

  it.each(named("C02", "C03", "C04", "C05", "C07", "C08"))("%s", (_title, one) =>
    onWard(async (ward) => {
      const first = z.string().parse(one.inputs.first_inpatient_date);
      const stretches = intervals.parse(one.inputs.IUC_intervals);
      const expected = z.record(z.string(), z.number()).parse(one.expected.IUC_day_by_date);
      ward.at(`${first}T12:00`);
      const stayId = await ward.admit(`${first}T08:00`);
      for (const { in: start, out } of stretches) {
        // Taken out in the evening; found in place when it was put in before the patient came.
        ward.at(`${out}T23:00`);
        const begin = start < first ? { found: `${first}T08:00` } : { in: `${start}T09:00` };
        await ward.insert(stayId, { ...begin, out: `${out}T22:00` });
      }
      ward.at("2025-01-01T00:00");
      for (const [day, number] of Object.entries(expected)) {
        // A round shows the end of its day: on the day of a last removal nothing is in place any more.
        const isLast = stretches.some(({ out }) => out === day) && !stretches.some(({ in: start }) => start === day);
        expect([day, await ward.eligibilityDays(day)]).toEqual([day, isLast ? [] : [number]]);
      }
      const after = textOf(dayOf(Object.keys(expected).toSorted().at(-1) ?? first) + 1);
      expect(await ward.eligibilityDays(after)).toEqual([]);
    }),
  );

  const devices: Record<string, CatheterKind[]> = {
    C12: ["indwelling-urethral"],
    C18: ["ileal-conduit"],
    C19: ["suprapubic", "indwelling-urethral"],
  };
  it.each(named("C12", "C18", "C19"))("%s", (_title, one) =>
    onWard(async (ward) => {
      ward.at("2024-03-20T12:00");
      const stayId = await ward.admit("2024-03-01T08:00");
      for (const kind of devices[one.id] ?? [])
        await ward.insert(stayId, { in: "2024-03-02T09:00", out: "2024-03-05T09:00" }, kind);
      const { sheet } = await ward.ask(endpoints.readMonth, { month: month.parse("2024-03") });
      const counts = one.expected.counts_as_indwelling_urinary_catheter === true;
      expect(sheet.rows[0]?.[3]).toBe(counts ? 3 : 0);
    }),
  );

  it.each(named("C21"))("%s", (_title, one) =>
    onWard(async (ward) => {
      const [start, out] = z.tuple([z.string(), z.string()]).parse([one.inputs.IUC_inserted, one.inputs.IUC_removed]);
      ward.at("2024-03-05T10:00");
      const stayId = await ward.admit("2024-03-04T08:00");
      const catheterId = await ward.insert(stayId, { in: start });
      expect(one.expected.IUC_day_for_eligibility).toEqual({ "2024-03-05": 1 });
      expect(await ward.eligibilityDays("2024-03-05")).toEqual([1]);
      ward.at("2024-03-20T12:00");
      await ward.ask(endpoints.removeCatheter, { catheterId, removedAt: out, seenVersion: 1 });
      const { sheet } = await ward.ask(endpoints.readMonth, { month: month.parse("2024-03") });
      expect(sheet.rows[0]?.[3]).toBe(one.expected.denominator_catheter_days);
    }),
  );

  /** So many catheter-days, and as many patient-days, in a month: full months and one shorter stay. */
  async function fill(ward: ApiWard, of: Month, days: number, sum: number): Promise<void> {
    const first = dayOf(`${of}-01`);
    for (const [i, length] of [...Array<number>(Math.floor(sum / days)).fill(days), sum % days].entries()) {
      if (length === 0) continue;
      const from = `${textOf(first - 1)}T${String(10 + (i % 10)).padStart(2, "0")}:00`;
      const to = `${textOf(first + length - 1)}T12:00`;
      const stayId = await ward.admit(from);
      await ward.insert(stayId, { in: from, out: to });
      await ward.discharge(stayId, to);
    }
  }

  it.each(named("D06", "D07"))("%s", (_title, one) =>
    onWard(async (ward) => {
      const [manual, electronic] = [numbers.parse(one.inputs.manual), numbers.parse(one.inputs.electronic)];
      ward.at("2024-06-15T12:00");
      for (const [i, days] of [31, 30, 31].entries()) {
        const of = month.parse(`2024-0${3 + i}`);
        await fill(ward, of, days, electronic[i] ?? 0);
        for (const [d, count] of spread(manual[i] ?? 0, days).entries()) {
          const day = textOf(dayOf(`${of}-01`) + d) as Day;
          const counts = { wardId: ward.wardId, day, patients: count, catheters: count, replaces: null };
          await ward.ask(endpoints.recordDailyCount, counts);
        }
      }
      const found = await ward.ask(endpoints.readAgreement, { wardId: ward.wardId, month: month.parse("2024-05") });
      expect(found.verdict === "accepted").toBe(one.expected.accepted);
      for (const { months } of [found.patientDays, found.catheterDays]) {
        expect(months.map((compared) => [compared.manual, compared.electronic])).toEqual(
          manual.map((sum, i) => [sum, electronic[i]]),
        );
        expect(months.map((compared) => compared.outcome === "agrees")).toEqual(one.expected.month_ok);
      }
    }),
  );

  it.each(named("D01"))("%s", (_title, one) => onWard((ward) => checkSample(ward, one, fill)));
});

async function checkSample(
  ward: ApiWard,
  one: ReferenceCase,
  fill: (ward: ApiWard, of: Month, days: number, sum: number) => Promise<void>,
): Promise<void> {
  const sampled = z.array(z.object({ patients: z.number(), with_IUC: z.number() })).parse(one.inputs.sampled);
  const of = month.parse("2024-04");
  ward.at("2024-05-15T12:00");
  await fill(ward, of, 30, z.number().parse(one.inputs.month_patient_days_counted_daily));
  // The Wednesdays of the month, of which it has four.
  for (const [week, { patients, with_IUC: catheters }] of sampled.entries()) {
    const day = `2024-04-${String(3 + 7 * week).padStart(2, "0")}` as Day;
    await ward.ask(endpoints.recordDailyCount, { wardId: ward.wardId, day, patients, catheters, replaces: null });
  }
  const asked = { wardId: ward.wardId, month: of, weekday: "wednesday", kind: "general" } as const;
  const found = await ward.ask(endpoints.readSample, asked);
  expect([found.sampledPatientDays, found.sampledCatheterDays, found.monthPatientDays]).toEqual([
    one.expected.sampled_patient_days,
    one.expected.sampled_catheter_days,
    one.inputs.month_patient_days_counted_daily,
  ]);
  expect(found.sampledUtilization).toBeCloseTo(z.number().parse(one.expected.sample_DUR), 4);
  expect(found.estimatedCatheterDays).toBeCloseTo(z.number().parse(one.expected.estimated_catheter_days), 2);
}
