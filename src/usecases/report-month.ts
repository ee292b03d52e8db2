import type { readMonth as endpoint } from "../../shared/api/months.ts";
import type { Month } from "../../shared/day.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { monthDays } from "../domain/days/month.ts";
import { reports } from "../domain/reports/index.ts";
import { ofOwnWards } from "../domain/reports/own-wards.ts";
import type { Act } from "./act.ts";
import { censusTaken } from "./census-taken.ts";
import type { Reach } from "./reach.ts";
import { readMonth } from "./read-month.ts";

/** A month of the wards within reach, with the ward of each row. Refuses `in-the-future`. */
export async function reportMonth(act: Act, input: { month: Month } & Reach): Promise<OutputOf<typeof endpoint>> {
  const { month, wardIds } = input;
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  const facts = await readMonth(act, { days, ...(wardIds ? { wardIds } : {}) });
  const sheet = reports.month(facts);
  return { month, wardIds: facts.wards.map((ward) => ward.wardId), sheet: wardIds ? ofOwnWards(sheet) : sheet };
}
