import type { Month } from "../../../shared/day.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { Dwell } from "../statistics/dwell-curve.ts";

/** A month of a ward. */
export interface ComparedMonth {
  readonly month: Month;
  readonly patientDays: number;
  readonly catheterDays: number;
  /** CAUTIs with their date of event in this month; null where the ward was not watched: missing is never zero. */
  readonly infections: number | null;
  /** Cases that could still become one of them; none where the ward was not under surveillance. */
  readonly openCases: readonly number[];
}

/** A ward of a comparison. */
export interface ComparedWard {
  readonly wardId: number;
  readonly code: string;
  readonly name: string;
  readonly type: string | null;
  /** What to know of the ward in this period: opened, closed, given another type. */
  readonly notes: readonly string[];
  /** One for each month of the period, in their order. */
  readonly months: readonly ComparedMonth[];
  /** Catheter-days by day, in order; days without any may be left out. */
  readonly days: readonly { readonly day: DayNumber; readonly catheterDays: number }[];
  /** The dates of the CAUTIs counted in the months, in order. */
  readonly infectionDays: readonly DayNumber[];
  /** Of catheters that were put in within the period. */
  readonly dwells: readonly Dwell[];
}

/** All that a comparison of wards may know. */
export interface ComparisonFacts {
  readonly facility: { readonly name: string; readonly zone: string };
  readonly months: readonly Month[];
  /** The instant up to which the record was read. */
  readonly asOf: Instant;
  /** Whether the census of the last day had been taken by then. */
  readonly complete: boolean;
  /** The type that the wards share; null when wards of every type are compared. */
  readonly type: string | null;
  /** By code. */
  readonly wards: readonly ComparedWard[];
  /** The ward whose months and infections are drawn one by one; null for all of them together. */
  readonly chosen: ComparedWard | null;
  /** Confirmed CAUTIs of these wards that no month counts, because the ward was not under surveillance in it. */
  readonly notCounted: readonly { readonly code: string; readonly count: number }[];
  /** Catheters of unknown insertion, which no dwell curve can hold. */
  readonly insertionsUnknown: number;
}

/** The sums of a ward over the period. */
export interface ComparedTotals {
  readonly patientDays: number;
  readonly catheterDays: number;
  /** Catheter-days of the months in which the ward was watched: what infections are counted over. */
  readonly watchedDays: number;
  /** Null where no month was watched. */
  readonly infections: number | null;
  /** Cultures that could still become one of them: while there are some, no figure made of the count is final. */
  readonly open: number;
}

/** Adds up months, of one ward or of several: numerators and denominators apart. */
export function totalsOf(months: readonly ComparedMonth[]): ComparedTotals {
  const watched = months.filter(({ infections }) => infections !== null);
  const sum = (list: readonly ComparedMonth[], pick: (month: ComparedMonth) => number) =>
    list.reduce((all, month) => all + pick(month), 0);
  return {
    patientDays: sum(months, (month) => month.patientDays),
    catheterDays: sum(months, (month) => month.catheterDays),
    watchedDays: sum(watched, (month) => month.catheterDays),
    infections: watched.length === 0 ? null : sum(watched, (month) => month.infections ?? 0),
    open: new Set(watched.flatMap(({ openCases }) => openCases)).size,
  };
}

/** Why a ward has no rate, or null where it has one. */
export function withoutRate({ infections, watchedDays }: ComparedTotals): string | null {
  if (infections === null) return "The unit was not under surveillance in this period.";
  return watchedDays === 0 ? "There are no catheter-days in the months under surveillance, so there is no rate." : null;
}

/** What a point or a row says of the cultures behind it; nothing where there are none. */
export function openPart({ open }: Pick<ComparedTotals, "open">): { open?: number } {
  return open === 0 ? {} : { open };
}

/** The note below a chart of which a point is hollow; nothing where none is. */
export function hollowNotes(points: readonly { readonly open?: number | undefined }[]): string[] {
  return points.some(({ open }) => open !== undefined)
    ? ["Hollow points are not final: cultures behind them are open."]
    : [];
}

/** Rates are told for so many catheter-days. */
export const per = 1_000;
export const rateUnit = "CAUTIs per 1,000 catheter-days";
/** The level of every limit that is shown. */
export const level = 0.95;

/** `Jan 2026 to Nov 2026` as months are written in files: `2026-01 to 2026-11`. */
export function periodText(months: readonly Month[]): string {
  const [first, last] = [months[0] ?? "", months.at(-1) ?? ""];
  return first === last ? first : `${first} to ${last}`;
}
