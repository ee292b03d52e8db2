import { type CaseState, caseState } from "../../shared/case-words.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import type { CountedCase } from "../domain/reports/infections.ts";
import { unindexed } from "./bulk.ts";
import { type KeptDetermination, keptFrom, mayCountIn } from "./determinations.ts";
import { inChunks } from "./in-chunks.ts";
import { parametersFor } from "./parameters.ts";
import type { Read } from "./store.ts";

const include = { patient: { select: { survivorId: true } } } as const;

/** A culture that was entered in error is in no list, unless a decision about it has to be seen again. */
const notGone = { NOT: { state: "closed", outcome: "gone" } } as const;

/** The cases of a facility in these states, collected from a day on, in the order of days. */
export async function casesIn(
  read: Read,
  facilityId: number,
  { states, from }: { readonly states: readonly CaseState[]; readonly from: DayNumber | null },
): Promise<KeptDetermination[]> {
  const rows = await read.db.determination.findMany({
    where: {
      state: { in: [...states] },
      ...notGone,
      facilityId,
      ...(from === null ? {} : { day: { gte: from } }),
    },
    include,
  });
  // Sorted here: asked for an order, SQLite goes through all days of the facility for the few rows of a state.
  return rows.map(keptFrom).sort((a, b) => a.day - b.day || a.caseId - b.caseId);
}

/** How many cases of a facility are in each state; of those that are settled, only the ones collected from a day on. */
export async function casesByState(
  read: Read,
  facilityId: number,
  settledFrom: DayNumber,
): Promise<Record<CaseState, number>> {
  const count = async (states: readonly CaseState[], from: DayNumber | null) => {
    const where = { state: { in: [...states] }, ...notGone, facilityId };
    const day = from === null ? {} : { day: { gte: from } };
    return read.db.determination.groupBy({ by: ["state"], where: { ...where, ...day }, _count: { _all: true } });
  };
  const rows = [...(await count(openStates, null)), ...(await count(settledStates, settledFrom))];
  const found = new Map(rows.map(({ state, _count }) => [state, _count._all]));
  return Object.fromEntries(caseState.options.map((state) => [state, found.get(state) ?? 0])) as Record<
    CaseState,
    number
  >;
}

/** What a person or the laboratory still has to do with a case. */
const openStates: readonly CaseState[] = ["waiting", "changed", "pending"];
const settledStates = caseState.options.filter((state) => !openStates.includes(state));

/** The cases in force of a facility whose event, or where there is none whose collection, lies between two days. */
export async function casesBetween(
  read: Read,
  facilityId: number,
  { first, last }: { readonly first: DayNumber; readonly last: DayNumber },
): Promise<KeptDetermination[]> {
  const days = { gte: first, lte: last };
  const rows = await read.db.determination.findMany({
    where: {
      ...{ state: { not: "replaced" }, ...notGone, facilityId },
      OR: [{ eventDay: days }, { eventDay: null, day: days }],
    },
    include,
    orderBy: [{ day: "asc" }, { caseId: "asc" }],
  });
  return rows.map(keptFrom);
}

/** The same as far as counts go, without their derivations: a month has many. */
export async function countedCases(
  read: Read,
  facilityId: number,
  { first, last }: { readonly first: DayNumber; readonly last: DayNumber },
): Promise<CountedCase[]> {
  const days = { gte: first, lte: last };
  const rows = await read.db.determination.findMany({
    where: {
      ...{ state: { notIn: ["replaced", "closed", "out-of-scope"] }, facilityId },
      OR: [{ eventDay: days }, { eventDay: null, day: days }],
    },
    select: countedColumns,
    orderBy: [{ day: "asc" }, { caseId: "asc" }],
  });
  return rows.map((row) => ({ ...row, mayCount: mayCountIn(row) }));
}

const countedColumns = {
  ...{ caseId: true, wardId: true, placeId: true, eventDay: true, day: true, isCauti: true, outcome: true },
  ...{ state: true, mayCount: true },
} as const;

/** Surviving patients of whom time alone may have changed a determination since it was made, in the order of ids. */
export async function patientsToDetermineAgain(read: Read, facilityId: number, today: DayNumber): Promise<number[]> {
  // Its own, so that it is answered from the index of the unsettled ones alone: a hospital has few of them at a time.
  const { values, given } = parametersFor(read);
  const rows = await read.sql.rows<{ id: number | bigint }>(
    `SELECT DISTINCT p.survivor_id AS id FROM patient p
     WHERE p.id IN (SELECT d.patient_id FROM determination d
                    WHERE (CASE WHEN d.settles_on > d.known_through AND d.state <> 'replaced' THEN d.known_through END) < ${given(today, "int")}
                      AND ${unindexed(read)}d.facility_id = ${given(facilityId, "int")})`,
    ...values,
  );
  return rows.map(({ id }) => Number(id)).sort((a, b) => a - b);
}

/**
 * Surviving patients who were ever on a ward and have a urine culture, or a finding in urine, on one of some days (`last`
 * null: on any later day), in the order of ids.
 */
export async function patientsOnWardWithCultures(
  read: Read,
  { facilityId, wardId }: { readonly facilityId: number; readonly wardId: number },
  { first, last }: { readonly first: DayNumber; readonly last: DayNumber | null },
): Promise<number[]> {
  const day = { gte: first, ...(last === null ? {} : { lte: last }) };
  const cultures = await read.db.determination.findMany({
    where: { day, state: { not: "replaced" }, facilityId },
    select: include,
  });
  const findings = await read.db.finding.findMany({
    where: { day, voidKey: 0, patient: { facilityId } },
    select: include,
  });
  const ids = [...new Set([...cultures, ...findings].map(({ patient }) => patient.survivorId))];
  const onWard = await inChunks(ids, (chunk) =>
    read.db.patient.findMany({
      where: { survivorId: { in: chunk }, stays: { some: { wardStays: { some: { wardId } } } } },
      select: { survivorId: true },
      distinct: ["survivorId"],
    }),
  );
  return [...new Set(onWard.map(({ survivorId }) => survivorId))].sort((a, b) => a - b);
}

/** The cases in force of a facility that were collected between two days, in the order of days. */
export async function casesCollected(
  read: Read,
  facilityId: number,
  { first, last }: { readonly first: DayNumber; readonly last: DayNumber },
): Promise<KeptDetermination[]> {
  const rows = await read.db.determination.findMany({
    where: { state: { not: "replaced" }, facilityId, day: { gte: first, lte: last } },
    include,
    orderBy: [{ day: "asc" }, { caseId: "asc" }],
  });
  return rows.map(keptFrom);
}
