import { describedFrom, inForceOn } from "../../domain/counting/ward-setting.ts";
import { dayMs, type Instant } from "../../domain/days/day-number.ts";
import { monthsFromTo } from "../../domain/days/month.ts";
import type { Held } from "../../domain/reports/line-gaps.ts";
import { missingLines } from "../../domain/reports/missing-lines.ts";
import type { MonthFacts } from "../../domain/reports/month-facts.ts";
import { type QualityFinding, qualityFindings } from "../../domain/timeline/data-quality.ts";
import { beginning } from "../../domain/timeline/first-change.ts";
import { stands } from "../../domain/timeline/timeline.ts";
import type { Read } from "../../store/store.ts";
import { type OwnedStay, openStays } from "../../store/timelines.ts";
import { type DayRange, ledgerByDay, ledgerSpan, type WardDaySum } from "../../store/ward-days.ts";
import type { WardRow } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";
import { readHeld } from "../imports/read-held.ts";
import { loadPolicies, type PolicyOn } from "../settings/load-policy.ts";
import { firstDayOf } from "../store-change.ts";
import { openDays, sumsByDay } from "./count-days.ts";
import { type FacilityRules, loadCountingRules } from "./counting-rules.ts";
import { lastingOf, periodOf, staysOfDays } from "./stays-of-days.ts";
import { uncountedDays } from "./uncounted-days.ts";
import { wardFacts } from "./ward-facts.ts";

export interface LoadMonth {
  /** null: all days that have anything. */
  readonly days: DayRange | null;
  /** Only these wards; all of the facility when left out. */
  readonly wardIds?: readonly number[];
}

/**
 * The days of wards over a period, with what is doubtful about them, read from one snapshot: the ledger, and the
 * stretches that still last counted up to now.
 */
export function loadMonth(act: Act, input: LoadMonth): Promise<MonthFacts> {
  return act.store.read((read) => monthFacts(read, act, input));
}

/** The same, from a snapshot that is open already. */
async function monthFacts(read: Read, act: Act, input: LoadMonth): Promise<MonthFacts> {
  const days = input.days ?? (await daysWithAnything(read, act, input.wardIds));
  const rules = await loadCountingRules(read, act.actor.facilityId, () => days);
  const stays = await staysOfDays(read, rules, { days, wardIds: input.wardIds });
  const policyOn = await loadPolicies(read, rules.facility.id);
  const wards = rules.wards.filter(({ id }) => input.wardIds?.includes(id) ?? true);
  return monthFactsOf(read, act, { days, rules, policyOn, wards, stays, wardIds: input.wardIds });
}

/** What a month is told of: the wards, the rules in force, and the stays that touch its days. */
export interface LoadedMonth {
  readonly days: DayRange;
  readonly rules: FacilityRules;
  readonly policyOn: PolicyOn;
  readonly wards: readonly WardRow[];
  readonly stays: readonly OwnedStay[];
  /** The wards within reach; all of the facility when left out. */
  readonly wardIds?: readonly number[] | undefined;
}

/** The same of stays that are loaded already. */
export async function monthFactsOf(read: Read, act: Act, loaded: LoadedMonth): Promise<MonthFacts> {
  const { days, rules, wards, stays } = loaded;
  const wardIds = new Set(wards.map((ward) => ward.id));
  const open = openDays(lastingOf(stays), rules, act.now).filter((day) => wardIds.has(day.wardId));
  const sums = sumsByDay(await ledgerByDay(read, [...wardIds], days), open);
  const months = monthsFromTo(days);
  const held = await readHeld(read, act, { months, ...(loaded.wardIds ? { wardIds: loaded.wardIds } : {}) });
  return factsOf(loaded, { act, sums, held, findings: findings(loaded, wardIds, act.now) });
}

/** From the first to the last day that the ledger or a patient still here can have; today when there is nothing. */
async function daysWithAnything(read: Read, act: Act, wardIds?: readonly number[]): Promise<DayRange> {
  const stays = await openStays(read, act.actor.facilityId, { until: act.now, wardIds });
  const rules = await loadCountingRules(read, act.actor.facilityId, (zone) => {
    const last = zone.dayOf(act.now);
    return { first: Math.min(last, ...stays.map(({ stay }) => firstDayOf(zone.dayOf(beginning(stay))))), last };
  });
  const today = rules.zone.dayOf(act.now);
  // Who came at a census of 24:00 was counted on the day before the day of arrival.
  const firstCounted = openDays(stays, rules, act.now).reduce((first, { day }) => Math.min(first, day), today);
  const open = stays.map(({ stay }) => rules.zone.dayOf(beginning(stay)));
  const span = await ledgerSpan(
    read,
    rules.wards.map((ward) => ward.id),
  );
  if (!span && open.length === 0) return { first: today, last: today };
  return {
    first: Math.min(firstCounted, ...open, span?.first ?? today),
    last: open.length > 0 ? Math.max(today, span?.last ?? today) : (span?.last ?? today),
  };
}

function findings(
  { days, rules, policyOn, wards, stays }: LoadedMonth,
  wardIds: ReadonlySet<number>,
  now: Instant,
): QualityFinding[] {
  const opened = new Map(wards.map((ward) => [ward.id, describedFrom(ward.settings)]));
  const opensAt = (wardId: number) => {
    const day = opened.get(wardId);
    return day === undefined ? null : rules.zone.firstInstantFrom(day * dayMs);
  };
  const policyAt = (wardId: number | null, at: number) => policyOn(wardId, rules.zone.dayOf(at)).body;
  const dayEnd = (at: Instant) => rules.zone.firstInstantFrom((rules.zone.dayOf(at) + 1) * dayMs);
  const period = { ...periodOf(rules, days), opensAt, policyAt, dayEnd };
  const here = stays.filter(({ stay }) => stay.wardStays.some((w) => wardIds.has(w.wardId)));
  return here.flatMap(({ stay }) => qualityFindings(stay, period, now));
}

function factsOf(
  loaded: LoadedMonth,
  given: { act: Act; sums: readonly WardDaySum[]; findings: readonly QualityFinding[]; held: Held },
): MonthFacts {
  const { act, sums, findings, held } = given;
  const { days, rules, wards: rows, stays } = loaded;
  const byWard = groupedBy(sums, ({ wardId }) => wardId);
  const early = new Set(findings.flatMap(({ kind, wardId }) => (kind === "ward-not-open" ? [wardId] : [])));
  const wards = rows
    .map((ward) => ({
      ...wardFacts(ward, { days, hadPatientsBefore: early.has(ward.id) }, byWard.get(ward.id) ?? []),
      missing: missingLines(held.lines, recordedOf(stays, ward.id), ward.code),
    }))
    .filter((ward) => ward.inpatient !== "none" || ward.patientDays > 0)
    .sort((a, b) => (a.code < b.code ? -1 : 1));
  const lastCensus = rules.census.instants.at(-1);
  const { name, zone } = rules.facility;
  return {
    facility: { name, zone },
    ...days,
    asOf: act.now,
    complete: lastCensus === undefined || lastCensus <= act.now,
    over: periodOf(rules, days).end <= act.now,
    census: censusInForce(rules, days),
    censuses: Array.from(rules.census.days, (day, i) => ({ day, at: rules.census.instants[i] ?? 0 })),
    wards,
    findings,
    uncounted: uncountedDays(loaded, act.now),
    undescribed: undescribedStays(loaded),
    held,
    missing: missingLines(held.lines, recordedOf(stays)),
  };
}

/** Of stays that only moves tell of, the last ward within reach and within the days. */
function undescribedStays({ days, rules, wards, stays }: LoadedMonth): MonthFacts["undescribed"] {
  const { end } = periodOf(rules, days);
  const within = new Set(wards.map(({ id }) => id));
  const wardIds = stays.flatMap(({ stay }) => {
    const here = stay.wardStays.filter((one) => stands(one) && one.startAt < end && within.has(one.wardId));
    const last = here.toSorted((a, b) => a.startAt - b.startAt).at(-1);
    return stay.spanFromMoves && last ? [last.wardId] : [];
  });
  return { stays: stays.length, wardIds };
}

/** How many moves and catheters of these stays are recorded; of one ward, those of stays on it. */
function recordedOf(stays: readonly OwnedStay[], wardId?: number): { moves: number; catheters: number } {
  let [moves, catheters] = [0, 0];
  for (const { stay } of stays) {
    const here = stay.wardStays.filter((one) => stands(one) && (wardId === undefined || one.wardId === wardId));
    if (here.length === 0) continue;
    moves += here.length;
    catheters += stay.catheters.filter(stands).length;
  }
  return { moves, catheters };
}

function censusInForce(rules: FacilityRules, days: DayRange): MonthFacts["census"] {
  const list = rules.facility.census;
  const start = inForceOn(list, days.first) ?? list[0];
  const later = list.filter((c) => c.fromDay > days.first && c.fromDay <= days.last);
  return [...(start ? [{ fromDay: days.first, time: start.time }] : []), ...later];
}
