import { inForceOn } from "../../domain/counting/ward-setting.ts";
import { type DayNumber, dayMs, type Instant } from "../../domain/days/day-number.ts";
import type { NecessityPatient, NecessityRules } from "../../domain/necessity/facts.ts";
import { monthNecessity } from "../../domain/necessity/month-necessity.ts";
import type { CareFacts, WardCare } from "../../domain/reports/care.ts";
import { ledgerCatheterDays } from "../../store/catheter-days.ts";
import { dailyCounts } from "../../store/daily-counts.ts";
import type { Read } from "../../store/store.ts";
import type { OwnedStay } from "../../store/timelines.ts";
import type { DayRange } from "../../store/ward-days.ts";
import type { WardRow } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";
import { necessityPatients, necessityRules } from "../record/necessity-facts.ts";
import { openDays } from "./count-days.ts";
import type { FacilityRules } from "./counting-rules.ts";
import type { LoadedMonth } from "./load-month.ts";
import { lastingOf, staysOfDays } from "./stays-of-days.ts";
import { uncountedDays } from "./uncounted-days.ts";

export interface ReadCare {
  readonly days: DayRange;
  /** Only these wards; all of the facility when left out. */
  readonly wardIds?: readonly number[] | undefined;
}

/** Reviews, days and care checks of the wards over a period, each figure with its rows, as known now. */
export async function readCare(read: Read, act: Act, input: ReadCare): Promise<CareFacts> {
  return (await careOf(read, act, await loadForCare(read, act, input))).facts;
}

/** A month with what judging need and care asks of the facility. */
export interface LoadedForCare extends LoadedMonth {
  readonly rules: NecessityRules & FacilityRules;
}

/** Loads what both the days of wards and the care on them are told of. */
export async function loadForCare(read: Read, act: Act, { days, wardIds }: ReadCare): Promise<LoadedForCare> {
  const rules = await necessityRules(read, act.actor.facilityId, () => days);
  const wards = rules.wards.filter((ward) => wardIds?.includes(ward.id) ?? true);
  const stays = await staysOfDays(read, rules, { days, wardIds });
  return { days, rules, policyOn: rules.policyOn, wards, stays, wardIds };
}

/** Care with everybody who had a catheter in the period: further figures of it need no other reading. */
export interface Care {
  readonly facts: CareFacts;
  readonly patients: readonly NecessityPatient[];
}

/** Care on the wards of what is loaded. */
export async function careOf(read: Read, act: Act, loaded: LoadedForCare): Promise<Care> {
  const { days, rules } = loaded;
  const wards = loaded.wards.filter((ward) => isInpatientWithin(ward, days));
  const found = await loadCare(read, act.now, { ...loaded, wards });
  const census = new Map(Array.from(rules.census.days, (day, i) => [day, rules.census.instants[i] ?? 0]));
  const censusAt = (day: DayNumber) => census.get(day) ?? rules.zone.firstInstantFrom(day * dayMs);
  const over = Math.min(days.last, rules.zone.dayOf(act.now) - 1);
  const byWard = patientsByWard(found.patients);
  const cared = wards.map((ward): WardCare => {
    const { id: wardId, code, settings } = ward;
    const catheterDays = found.catheterDays.get(wardId) ?? [];
    const patients = byWard.get(wardId) ?? [];
    const counted = found.counts.get(wardId)?.filter(({ day }) => day <= over) ?? null;
    return {
      ...{ wardId, code, name: inForceOn(settings, days.last)?.name ?? code, catheterDays: catheterDays.length },
      necessity: monthNecessity({ ...{ ...days, rules, wardId, now: act.now, catheterDays, patients }, censusAt }),
      manualCountsMissing: counted === null ? null : Math.max(0, over - days.first + 1 - counted.length),
      manualCounts: counted ?? [],
      absencesUnknown: found.uncounted.get(wardId)?.length ?? 0,
    };
  });
  const { name } = rules.facility;
  const facts = { facility: { name, zone: rules.zone.name }, ...days, asOf: act.now, wards: cared };
  return { facts, patients: found.patients };
}

/** What the wards' figures are made of, by ward. */
async function loadCare(read: Read, now: Instant, { rules, days, wards, stays }: LoadedForCare) {
  const wardIds = wards.map((ward) => ward.id);
  const open = openDays(lastingOf(stays), rules, now);
  const stored = await ledgerCatheterDays(read, wardIds, days);
  return {
    patients: await necessityPatients(read, withCatheters(stays)),
    catheterDays: groupedBy([...stored, ...open.filter(({ catheter }) => catheter)], ({ wardId }) => wardId),
    counts: groupedBy(await dailyCounts(read, wardIds, days), ({ wardId }) => wardId),
    uncounted: groupedBy(
      uncountedDays({ rules, wards, stays }, now).filter(({ kind }) => kind === "no-ward"),
      ({ wardId }) => wardId ?? 0,
    ),
  };
}

/** Survivors with a catheter: of the others there is nothing to review. */
function withCatheters(stays: readonly OwnedStay[]): number[] {
  return [...new Set(stays.filter(({ stay }) => stay.catheters.length > 0).map(({ survivorId }) => survivorId))];
}

function isInpatientWithin({ settings }: WardRow, { first, last }: DayRange): boolean {
  const within = settings.filter(({ fromDay }) => fromDay > first && fromDay <= last);
  return [inForceOn(settings, first), ...within].some((said) => said?.setting === "inpatient");
}

function patientsByWard(patients: readonly NecessityPatient[]): Map<number, NecessityPatient[]> {
  const onWards = patients.flatMap((patient) => {
    const wardIds = new Set(patient.stays.flatMap((stay) => stay.wardStays.map(({ wardId }) => wardId)));
    return [...wardIds].map((wardId) => ({ wardId, patient }));
  });
  const byWard = groupedBy(onWards, ({ wardId }) => wardId);
  return new Map([...byWard].map(([wardId, list]) => [wardId, list.map(({ patient }) => patient)]));
}
