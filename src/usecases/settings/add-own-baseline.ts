import type { Month } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import { openOf } from "../../domain/comparison/compare-wards.ts";
import type { ComparedWard } from "../../domain/comparison/comparison-facts.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import type { Act } from "../act.ts";
import { type ReadOtherwise, readOtherwise, readOtherwiseText } from "../cultures/with-readings.ts";
import { readComparison } from "../months/read-comparison.ts";
import { addBaseline } from "./add-baseline.ts";
import { zoneOfFacility } from "./find-facility.ts";

/** What the wards counted in which months, and what it is to be called. */
export interface OwnPeriod {
  readonly name: string;
  readonly fromMonth: Month;
  readonly toMonth: Month;
}

/**
 * Adds the wards' own counts of months that are over as a baseline by ward: later corrections of those months do not
 * change it. A ward that was watched in some of the months is counted in those alone, so that infections and
 * catheter-days belong together; one never watched has a utilization and no rate.
 * Refuses `month-not-over`, `period-impossible`, and `baseline-unusable` where no ward counted anything.
 */
export async function addOwnBaseline(
  act: Act,
  { name, fromMonth, toMonth }: OwnPeriod,
): Promise<{ baselineId: number }> {
  const zone = zoneNamed(await zoneOfFacility(act.store, act.actor));
  const today = zone.dayOf(act.now);
  if (today <= monthDays(toMonth).last)
    refuse("month-not-over", `${toMonth} is not over yet.`, { pointer: "/toMonth" });
  const pointers = { from: "/fromMonth", ward: "/name" };
  const { facts } = await readComparison(act, { from: fromMonth, to: toMonth, type: null, ward: null, pointers });
  const otherwise = await act.store.read((read) => readOtherwise(read, act.actor.facilityId, facts.wards));
  const months = fromMonth === toMonth ? fromMonth : `${fromMonth} to ${toMonth}`;
  const open = openOf(facts);
  const waiting = open === 0 ? "" : `; ${open} cultures were open then`;
  return addBaseline(act, {
    kind: "own-period",
    rows: facts.wards
      .map((ward) => countsOf(ward, otherwise.get(ward.wardId)))
      .filter(({ patient_days: days }) => days !== "0"),
    origin: {
      name,
      source: `The ledger and the determinations of ${facts.facility.name}, counted on ${dayText(today)}${waiting}`,
      year: months,
      definition: `The editions by which each ward was watched in those months${pointsText(otherwise)}`,
      population: `The inpatient wards of ${facts.facility.name}, each compared with itself`,
      edition: `Own counts of ${months}`,
    },
  });
}

/** As many of the points as the definition has room for; the rows say which wards and months. */
function pointsText(otherwise: ReadonlyMap<number, ReadOtherwise>): string {
  const points = [...new Set([...otherwise.values()].flatMap((one) => one.points))];
  if (points.length === 0) return "";
  const text = `; non-default reading of the definitions: ${points.join("; ")}`;
  return text.length <= mostPoints ? text : `${text.slice(0, mostPoints - 1)}…`;
}

/** The definition of a baseline holds 500 characters. */
const mostPoints = 400;

function countsOf({ code, months }: ComparedWard, otherwise: ReadOtherwise | undefined): Record<string, string> {
  const watched = months.filter(({ infections }) => infections !== null);
  const counted = watched.length > 0 ? watched : months;
  const sum = (key: "patientDays" | "catheterDays" | "infections") =>
    counted.reduce((all, month) => all + (month[key] ?? 0), 0);
  const left = months.length - watched.length;
  const notes = [
    ...(watched.length > 0 && left > 0 ? [`Not watched in ${left} of ${months.length} months, left out`] : []),
    ...(otherwise ? [readOtherwiseText(otherwise)] : []),
  ];
  return {
    ...{ ward: code, infections: watched.length > 0 ? String(sum("infections")) : "" },
    ...{ catheter_days: String(sum("catheterDays")), patient_days: String(sum("patientDays")) },
    ...(notes.length > 0 ? { note: notes.join("; ") } : {}),
  };
}
