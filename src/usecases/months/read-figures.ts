import type { Month } from "../../../shared/day.ts";
import type { MonthReport } from "../../../shared/month-report.ts";
import { inForceOn } from "../../domain/counting/ward-setting.ts";
import { dayMs } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { nonDefaultWords, type ReadOn } from "../../domain/editions/readings.ts";
import { monthCatheters } from "../../domain/necessity/month-catheters.ts";
import { completenessOf } from "../../domain/reports/completeness.ts";
import type { FigureFacts, WardInMonth } from "../../domain/reports/figure-facts.ts";
import type { Gap } from "../../domain/reports/gaps.ts";
import { gapsOf } from "../../domain/reports/gaps.ts";
import type { WardInfections } from "../../domain/reports/infections.ts";
import { monthFigures } from "../../domain/reports/month-figures.ts";
import { readOnOf } from "../../store/chosen-readings.ts";
import type { Read } from "../../store/store.ts";
import type { WardRow } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";
import type { Reach } from "../reach.ts";
import { type LoadedComparison, loadComparison } from "./load-comparison.ts";
import { monthFactsOf } from "./load-month.ts";
import { type Care, careOf, type LoadedForCare, loadForCare } from "./read-care.ts";
import { infectionsIn } from "./read-infections.ts";

/** A month's figures of the wards within reach, and what is missing from it, read from one snapshot. */
export async function readFigures(
  read: Read,
  act: Act,
  { month, wardIds }: { month: Month } & Reach,
): Promise<{ report: MonthReport; gaps: Gap[] }> {
  const range = monthDays(month);
  const loaded = await loadForCare(read, act, { days: range, wardIds });
  const days = await monthFactsOf(read, act, loaded);
  const care = await careOf(read, act, loaded);
  const { facilityId } = act.actor;
  const compared = await loadComparison(read, facilityId, month);
  const infections = await infectionsIn(read, facilityId, { month, wardIds: days.wards.map(({ wardId }) => wardId) });
  const readOn = await readOnOf(read, facilityId);
  const given = { act, rules: loaded.rules, patients: care.patients, infections, month, compared, readOn };
  const wards = wardsInMonth(given);
  const facts: FigureFacts = { days, care: care.facts, wards, comparison: compared.comparison };
  const gaps = gapsOf(days, care.facts.wards, infections);
  return { report: monthFigures(facts, completenessOf(gaps, days.wards)), gaps };
}

function wardsInMonth(given: {
  act: Act;
  rules: LoadedForCare["rules"];
  patients: Care["patients"];
  infections: readonly WardInfections[];
  month: Month;
  compared: LoadedComparison;
  readOn: ReadOn;
}): WardInMonth[] {
  const { act, rules, patients, infections, month, compared, readOn } = given;
  const { first, last } = monthDays(month);
  const end = rules.zone.firstInstantFrom((last + 1) * dayMs);
  const catheters = monthCatheters(patients, { first, last, end }, { rules, now: act.now });
  const inserted = groupedBy(catheters.inserted, ({ wardId }) => wardId);
  const dwells = groupedBy(catheters.dwells, ({ wardId }) => wardId);
  const open = groupedBy(catheters.open, (wardId) => wardId);
  const infectionsOf = new Map(infections.map((one) => [one.wardId, one]));
  return rules.wards.map(({ id: wardId, settings }) => {
    const said = inForceOn(settings, last);
    const found = infectionsOf.get(wardId);
    const watch = found?.watch ?? null;
    return {
      ...{ wardId, type: said?.type ?? null, edition: watch?.edition ?? null },
      nonDefault: nonDefaultWords(watch?.edition ?? null, first, readOn),
      infections: found && watch ? { value: found.cautis } : { value: null, reason: notWatched },
      openCultures: found?.open ?? [],
      catheters: {
        inserted: inserted.get(wardId) ?? [],
        dwells: dwells.get(wardId) ?? [],
        open: act.now < end ? (open.get(wardId)?.length ?? 0) : null,
      },
      factors: factorsOf(wardId, said, compared),
    };
  });
}

const notWatched = "Not watched for infections in this month.";
/** What models are told of a ward: its beds, what was said of every ward, and what was said of this one. */
export function factorsOf(
  wardId: number,
  said: WardRow["settings"][number] | undefined,
  { factors }: LoadedComparison,
): Record<string, string | number> {
  const told = (id: number | null) =>
    factors.filter((factor) => factor.wardId === id).map(({ factor, value }) => [factor, value] as const);
  const beds = said?.beds == null ? [] : [["beds", said.beds] as const];
  return Object.fromEntries<string | number>([...beds, ...told(null), ...told(wardId)]);
}
