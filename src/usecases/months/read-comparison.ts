import type { Month } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import {
  comparedWard,
  isInpatientWithin,
  type Period,
  typeAtEnd,
  type WardCounts,
} from "../../domain/comparison/compared-ward.ts";
import type { ComparisonFacts } from "../../domain/comparison/comparison-facts.ts";
import { monthsBetween } from "../../domain/comparison/period.ts";
import { dwellsOf } from "../../domain/counting/dwells.ts";
import { dayMs } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import type { Read } from "../../store/store.ts";
import { openStays, staysBetween } from "../../store/timelines.ts";
import { ledgerByDay } from "../../store/ward-days.ts";
import type { Act } from "../act.ts";
import { determineByNow } from "../cultures/determine-by-now.ts";
import { withReadings } from "../cultures/with-readings.ts";
import { groupedBy } from "../grouped-by.ts";
import { openDays, sumsByDay } from "./count-days.ts";
import { type FacilityRules, loadCountingRules } from "./counting-rules.ts";
import { infectionsOfWards } from "./infections-of-wards.ts";

/** What is compared: months, wards of one type (null: every inpatient ward), and the ward that is looked at. */
export interface Compared {
  readonly from: Month;
  readonly to: Month;
  readonly type: string | null;
  readonly ward: string | null;
  /** Read that ward and no other. */
  readonly alone?: boolean;
  /** The fields that gave the first month and the ward, where they have other names. */
  readonly pointers?: { readonly from: string; readonly ward: string };
}

/** The facts of a comparison with every type of ward that could have been asked for. */
export interface ReadComparison {
  readonly facts: ComparisonFacts;
  readonly types: readonly { readonly type: string; readonly wards: number }[];
}

const usualPointers = { from: "/from", ward: "/ward" };

/** Reads what a comparison may know, from one snapshot. Refuses `ward-unknown` and `ward-type-unknown`. */
export async function readComparison(act: Act, asked: Compared): Promise<ReadComparison> {
  const { from, to, type, ward, alone = false, pointers = usualPointers } = asked;
  const months = monthsBetween(from, to, pointers.from);
  const days = { first: monthDays(from).first, last: monthDays(to).last };
  await determineByNow(act);
  return act.store.read(async (read) => {
    const { facilityId } = act.actor;
    const rules = await loadCountingRules(read, facilityId, () => days);
    const inpatient = rules.wards.filter(({ settings }) => isInpatientWithin(settings, days));
    const typed = inpatient.map((row) => ({ row, type: typeAtEnd(row, days) }));
    const chosen = typed.filter((one) => (type === null || one.type === type) && (!alone || one.row.code === ward));
    if (type !== null && chosen.length === 0)
      refuse("ward-type-unknown", "No inpatient unit of this period is of this type.", { pointer: "/type" });
    const loaded = await loadWards(read, act, { rules, days, wardIds: chosen.map(({ row }) => row.id) });
    const compared = chosen.map(({ row }) =>
      comparedWard(row, { months, period: days, counts: loaded.countsOf(row.id) }),
    );
    const wards = await withReadings(read, facilityId, compared);
    const looked = ward === null ? null : (wards.find(({ code }) => code === ward) ?? unknownWard(ward, pointers.ward));
    const lastCensus = rules.census.instants.at(-1);
    return {
      types: countedTypes(typed.map((one) => one.type)),
      facts: {
        facility: { name: rules.facility.name, zone: rules.zone.name },
        ...{ months, asOf: act.now, type, wards, chosen: looked },
        notCounted: wards.flatMap(({ wardId, code, infectionDays }) => {
          const count = loaded.countsOf(wardId).infections.length - infectionDays.length;
          return count === 0 ? [] : [{ code, count }];
        }),
        complete: lastCensus === undefined || lastCensus <= act.now,
        insertionsUnknown: loaded.insertionsUnknown,
      },
    };
  });
}

/** Refuses `ward-unknown` for a code that no compared ward has. */
function unknownWard(code: string, pointer: string): never {
  return refuse("ward-unknown", `None of the compared units has the code ${JSON.stringify(code)}.`, { pointer });
}

function countedTypes(types: readonly (string | null)[]): { type: string; wards: number }[] {
  const named = types.flatMap((type) => type ?? []);
  return [...groupedBy(named, (type) => type)]
    .map(([type, list]) => ({ type, wards: list.length }))
    .sort((a, b) => (a.type < b.type ? -1 : 1));
}

interface Loaded {
  readonly countsOf: (wardId: number) => WardCounts;
  readonly insertionsUnknown: number;
}

async function loadWards(
  read: Read,
  act: Act,
  { rules, days, wardIds }: { rules: FacilityRules; days: Period; wardIds: number[] },
): Promise<Loaded> {
  const { facilityId } = act.actor;
  const { zone } = rules;
  const own = new Set(wardIds);
  const open = openDays(await openStays(read, facilityId, { until: act.now, wardIds }), rules, act.now);
  const sums = sumsByDay(
    await ledgerByDay(read, wardIds, days),
    open.filter(({ wardId }) => own.has(wardId)),
  );
  const period = {
    start: zone.firstInstantFrom(days.first * dayMs),
    end: zone.firstInstantFrom((days.last + 1) * dayMs),
  };
  const stays = await staysBetween(read, facilityId, { ...period, wardIds });
  const dwells = stays.flatMap(({ stay }) => dwellsOf(stay, rules, act.now)).filter(({ wardId }) => own.has(wardId));
  const { infections, open: cultures } = await infectionsOfWards(read, facilityId, { days, wardIds: own });
  const begun = dwells.filter(
    ({ insertedOn }) => insertedOn !== null && insertedOn >= days.first && insertedOn <= days.last,
  );
  const byWard = {
    sums: groupedBy(sums, ({ wardId }) => wardId),
    scopes: groupedBy(await scopesOfFacility(read, facilityId, wardIds), ({ wardId }) => wardId),
    infections: groupedBy(infections, ({ wardId }) => wardId),
    open: groupedBy(cultures, ({ wardId }) => wardId),
    dwells: groupedBy(begun, ({ wardId }) => wardId),
  };
  const of = <T>(known: ReadonlyMap<number, readonly T[]>, wardId: number) => known.get(wardId) ?? [];
  return {
    countsOf: (wardId) => ({
      ...{ sums: of(byWard.sums, wardId), scopes: of(byWard.scopes, wardId), dwells: of(byWard.dwells, wardId) },
      ...{ infections: of(byWard.infections, wardId), open: of(byWard.open, wardId) },
    }),
    insertionsUnknown: dwells.filter(({ insertedOn }) => insertedOn === null).length,
  };
}
