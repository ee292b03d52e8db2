import type { readAgreement as endpoint } from "../../../shared/api/agreements.ts";
import type { Month } from "../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { agreement, type CountedDay, type QuantityAgreement } from "../../domain/counting/agreement.ts";
import { monthDays, monthOf } from "../../domain/days/month.ts";
import { type CountedByHand, dailyCounts } from "../../store/daily-counts.ts";
import type { DayRange } from "../../store/ward-days.ts";
import type { Act } from "../act.ts";
import { censusTaken } from "./census-taken.ts";
import { loadMonth } from "./load-month.ts";

/**
 * Compares a ward's electronic counts with those made by hand, over three months. A day with a manual count and no
 * patient in the record counts as an electronic zero; days without a manual count are not compared.
 * Refuses `in-the-future`.
 */
export async function readAgreement(
  act: Act,
  { wardId, month }: InputOf<typeof endpoint>,
): Promise<OutputOf<typeof endpoint>> {
  const days = { first: monthDays(twoMonthsBefore(month)).first, last: monthDays(month).last };
  await censusTaken(act, monthDays(month).first, "/month");
  const byHand = await act.store.read((read) => dailyCounts(read, [wardId], days));
  const judged = agreement({ days: await countedDays(act, { wardId, days, byHand }), lastMonth: month });
  const { verdict, sentence } = judged;
  const patientDays = listed(judged.patientDays);
  const catheterDays = listed(judged.catheterDays);
  return { wardId, verdict, sentence, patientDays, catheterDays };
}

async function countedDays(
  act: Act,
  { wardId, days, byHand }: { wardId: number; days: DayRange; byHand: readonly CountedByHand[] },
): Promise<CountedDay[]> {
  const facts = await loadMonth(act, { days, wardIds: [wardId] });
  const ward = facts.wards.find((found) => found.wardId === wardId);
  const electronic = new Map((ward?.days ?? []).map((d) => [d.day, d]));
  return byHand.map(({ day, patients, catheters }) => ({
    day,
    manual: { patients, catheters },
    // A ward that nobody described is not counted: that is missing, not zero.
    electronic:
      ward === undefined || ward.inpatient === "unknown"
        ? null
        : { patients: electronic.get(day)?.patientDays ?? 0, catheters: electronic.get(day)?.catheterDays ?? 0 },
  }));
}

function twoMonthsBefore(month: Month): Month {
  const before = (m: Month) => monthOf(monthDays(m).first - 1);
  return before(before(month));
}

function listed({ verdict, sentence, months }: QuantityAgreement) {
  return { verdict, sentence, months: months.map((one) => ({ ...one })) };
}
