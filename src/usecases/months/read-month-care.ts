import type {
  readMonthCare as readMonthCareEndpoint,
  readWardCare as readWardCareEndpoint,
} from "../../../shared/api/months.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { monthCatheters } from "../../domain/necessity/month-catheters.ts";
import type { CatheterOnDay } from "../../domain/necessity/month-necessity.ts";
import { careSheet } from "../../domain/reports/care.ts";
import { ofOwnWards } from "../../domain/reports/own-wards.ts";
import { type CatheterOwner, ownersOfCatheters, patientIdsOf } from "../../store/catheters.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { view } from "../view.ts";
import { censusTaken } from "./census-taken.ts";
import { careOf, loadForCare, readCare } from "./read-care.ts";
import { periodOf } from "./stays-of-days.ts";

/** A month's reviews and care of the wards within reach. Refuses `in-the-future`. */
export async function readMonthCare(
  act: Act,
  { month, wardIds }: { month: Month } & Reach,
): Promise<OutputOf<typeof readMonthCareEndpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  const facts = await act.store.read((read) => readCare(read, act, { days, wardIds }));
  const sheet = careSheet(facts);
  return { month, wardIds: facts.wards.map((ward) => ward.wardId), sheet: wardIds ? ofOwnWards(sheet) : sheet };
}

/** The rows behind a ward's figures of care; the view is recorded. Refuses `in-the-future`. */
export async function readWardCare(
  act: Act,
  { month, wardId }: { month: Month; wardId: number },
): Promise<OutputOf<typeof readWardCareEndpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  return view(act, async (read, seen) => {
    const loaded = await loadForCare(read, act, { days, wardIds: [wardId] });
    const { facts, patients } = await careOf(read, act, loaded);
    const { inserted } = monthCatheters(
      patients,
      { ...days, ...periodOf(loaded.rules, days) },
      { ...loaded, now: act.now },
    );
    const rows: [string, readonly CatheterOnDay[]][] = [
      ...Object.entries(facts.wards[0]?.necessity ?? {}),
      ["insertions", inserted.filter((one) => one.wardId === wardId)],
    ];
    const catheterIds = new Set(rows.flatMap(([, found]) => found.map(({ catheterId }) => catheterId)));
    const owners = await ownersOfCatheters(read, act.actor.facilityId, [...catheterIds]);
    const patientIds = patientIdsOf(owners);
    const figures = rows.map(([figure, found]) => ({ figure, rows: found.map((row) => rowTold(row, owners)) }));
    seen({ action: "view-ward-care", patientIds, details: { wardId, month } });
    return { month, wardId, figures };
  });
}

function rowTold(
  { catheterId, day }: CatheterOnDay,
  owners: ReadonlyMap<number, CatheterOwner>,
): OutputOf<typeof readWardCareEndpoint>["figures"][number]["rows"][number] {
  const owner = owners.get(catheterId);
  if (!owner) throw new Error(`catheter ${catheterId} has no patient`);
  return { catheterId, day: dayText(day), ...owner };
}
