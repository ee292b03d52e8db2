import type { readMonthCare, readWardCare } from "../../shared/api/months.ts";
import type { Month } from "../../shared/day.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { dayText } from "../domain/days/day-number.ts";
import { monthDays } from "../domain/days/month.ts";
import type { CatheterOnDay } from "../domain/necessity/month-necessity.ts";
import { careSheet } from "../domain/reports/care.ts";
import { ofOwnWards } from "../domain/reports/own-wards.ts";
import { writeAudit } from "../store/audit.ts";
import { patientsOfCatheters } from "../store/catheters.ts";
import { type Act, recording } from "./act.ts";
import { censusTaken } from "./census-taken.ts";
import type { Reach } from "./reach.ts";
import { readCare } from "./read-care.ts";

/** A month's reviews and care of the wards within reach. Refuses `in-the-future`. */
export async function reportCare(
  act: Act,
  { month, wardIds }: { month: Month } & Reach,
): Promise<OutputOf<typeof readMonthCare>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  const facts = await act.store.read((read) => readCare(read, act, { days, wardIds }));
  const sheet = careSheet(facts);
  return { month, wardIds: facts.wards.map((ward) => ward.wardId), sheet: wardIds ? ofOwnWards(sheet) : sheet };
}

/** The rows behind a ward's figures of care; the view is recorded. Refuses `in-the-future`. */
export async function reportWardCare(
  act: Act,
  { month, wardId }: { month: Month; wardId: number },
): Promise<OutputOf<typeof readWardCare>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  return act.store.tx(
    async (tx) => {
      const { wards } = await readCare(tx, act, { days, wardIds: [wardId] });
      const necessity: [string, readonly CatheterOnDay[]][] = Object.entries(wards[0]?.necessity ?? {});
      const figures = necessity.map(([figure, rows]) => ({
        figure,
        rows: rows.map(({ catheterId, day }) => ({ catheterId, day: dayText(day) })),
      }));
      const catheterIds = [...new Set(figures.flatMap(({ rows }) => rows.map(({ catheterId }) => catheterId)))];
      const patientIds = await patientsOfCatheters(tx, act.actor.facilityId, catheterIds);
      await writeAudit(tx, recording(act), { action: "view-ward-care", patientIds, details: { wardId, month } });
      return { month, wardId, figures };
    },
    { snapshot: true },
  );
}
