import type { Month } from "../../../shared/day.ts";
import type { WardSetting } from "../../../shared/vocabulary.ts";
import { describedFrom, inForceOn } from "../counting/ward-setting.ts";
import { type DayNumber, dayText } from "../days/day-number.ts";
import { monthOf } from "../days/month.ts";
import type { Dwell } from "../statistics/dwell-curve.ts";
import type { ComparedWard } from "./comparison-facts.ts";

/** A ward as it was described, in the order of days. */
export interface DescribedWard {
  readonly id: number;
  readonly code: string;
  readonly closedDay: DayNumber | null;
  readonly settings: readonly {
    readonly fromDay: DayNumber;
    readonly name: string;
    readonly type: string | null;
    readonly setting: WardSetting | null;
  }[];
}

/** Days from first to last, both included. */
export interface Period {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/** What was counted on a ward. */
export interface WardCounts {
  readonly sums: readonly { readonly day: DayNumber; readonly patientDays: number; readonly catheterDays: number }[];
  /** In which months it was watched. */
  readonly scopes: readonly { readonly fromMonth: Month; readonly toMonth: Month | null }[];
  readonly infections: readonly { readonly day: DayNumber }[];
  readonly open: readonly { readonly month: Month; readonly caseId: number }[];
  readonly dwells: readonly Dwell[];
}

/** Whether a ward was one for inpatients on any day of the period. */
export function isInpatientWithin(settings: DescribedWard["settings"], { first, last }: Period): boolean {
  const within = settings.filter(({ fromDay }) => fromDay > first && fromDay <= last);
  return [inForceOn(settings, first), ...within].some((said) => said?.setting === "inpatient");
}

/** The type that a ward has at the end of a period: wards are compared under it. */
export function typeAtEnd({ settings }: DescribedWard, { last }: Period): string | null {
  return inForceOn(settings, last)?.type ?? null;
}

/** A ward of a comparison. Infections of months in which it was not watched are not counted, and not zero either. */
export function comparedWard(
  ward: DescribedWard,
  { months, period, counts }: { months: readonly Month[]; period: Period; counts: WardCounts },
): ComparedWard {
  const isWatched = (month: Month) =>
    counts.scopes.some(({ fromMonth, toMonth }) => fromMonth <= month && (toMonth === null || month <= toMonth));
  const sums = counts.sums.toSorted((a, b) => a.day - b.day);
  const infectionDays = counts.infections.map(({ day }) => day).filter((day) => isWatched(monthOf(day)));
  return {
    ...{ wardId: ward.id, code: ward.code, name: inForceOn(ward.settings, period.last)?.name ?? ward.code },
    ...{ type: typeAtEnd(ward, period), notes: notesOf(ward, period), dwells: counts.dwells },
    months: months.map((month) => {
      const own = sums.filter(({ day }) => monthOf(day) === month);
      const add = (key: "patientDays" | "catheterDays") => own.reduce((all, sum) => all + sum[key], 0);
      const infections = isWatched(month) ? infectionDays.filter((day) => monthOf(day) === month).length : null;
      const open = counts.open.filter((one) => one.month === month && isWatched(month)).map(({ caseId }) => caseId);
      const days = { patientDays: add("patientDays"), catheterDays: add("catheterDays") };
      return { month, ...days, infections, openCases: [...new Set(open)] };
    }),
    days: sums.filter(({ day }) => isWatched(monthOf(day))).map(({ day, catheterDays }) => ({ day, catheterDays })),
    infectionDays: infectionDays.sort((a, b) => a - b),
  };
}

/** What happened to the ward within the period, in sentences. */
function notesOf(ward: DescribedWard, { first, last }: Period): string[] {
  const { settings, closedDay } = ward;
  const opened = describedFrom(settings);
  const type = typeAtEnd(ward, { first, last });
  const others = settings.filter(
    ({ fromDay, type: other }, at) =>
      other !== type && fromDay <= last && (settings[at + 1]?.fromDay ?? last + 1) > first,
  );
  return [
    ...(opened !== undefined && opened > first && opened <= last ? [`Known from ${dayText(opened)}.`] : []),
    ...(closedDay !== null && closedDay < last && closedDay >= first ? [`Closed after ${dayText(closedDay)}.`] : []),
    ...others.map(({ type: other }) => `Was of another type in this period: ${other ?? "type not given"}.`),
  ];
}
