import { refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import { type PatientTimeline, revise } from "../../domain/timeline/timeline.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { lockPatients } from "../../store/patients.ts";
import { policies } from "../../store/policies.ts";
import { changeScope, type ScopeRow, scopesOfWard } from "../../store/scopes.ts";
import type { Tx } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { repointAliases } from "../../store/ward-aliases.ts";
import { countsOfBoth, isGone, moveScope, moveWardEntries, setMerged, type WardPair } from "../../store/ward-merges.ts";
import { patientsOfWard } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { determineWard } from "../cultures/determine-ward.ts";
import { storeChanges } from "../store-change.ts";
import { knownWard } from "./known-ward.ts";

/** How many patients are moved and counted again at a time. */
const chunkSize = 200;

export interface MergeWards {
  readonly wardId: number;
  /** The ward that it becomes. */
  readonly intoWardId: number;
  readonly reason: string;
}

/**
 * Two wards turn out to be one: the stays, counts, surveillance and people of `wardId` move to `intoWardId`, whose days are
 * counted again and whose cultures are determined again. The merged ward is kept as a record, and its code means the other
 * one in later files.
 * Refuses `not-found`, `same-ward`, `ward-gone`, `ward-closed`, `scope-overlaps`, `ward-counts-overlap` and `ward-has-policy`.
 */
export function mergeWards(act: Act, { wardId, intoWardId, reason }: MergeWards): Promise<{ wardId: number }> {
  const pair: WardPair = { fromId: wardId, intoId: intoWardId };
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason };
    await lockFacility(tx, by.facilityId);
    const countedTwice = await refuseUnfit(tx, by.facilityId, pair);
    const moves = await moveScopes(tx, by, pair);
    const patients = await patientsOfWard(tx, wardId);
    for (let i = 0; i < patients.length; i += chunkSize) {
      const patientIds = patients.slice(i, i + chunkSize);
      await lockPatients(tx, by.facilityId, patientIds);
      const timelines = [...(await loadTimelines(tx, patientIds)).values()];
      await storeChanges(
        tx,
        by,
        timelines.map((before) => ({ before, after: moved(before, pair) })),
      );
    }
    await moveWardEntries(tx, by, { ...pair, countedTwice });
    await repointAliases(tx, by, pair);
    await setMerged(tx, by, pair);
    // Only now is everything in its place that decides.
    for (let i = 0; i < patients.length; i += chunkSize)
      await determineAgain(tx, by, { patientIds: patients.slice(i, i + chunkSize), cause: "merge-wards" });
    // The cultures of the other ward are in scope in the months that moved to it.
    for (const { fromMonth: from, toMonth: to } of moves)
      await determineWard(tx, by, { ...{ wardId: intoWardId, from, to }, cause: "merge-wards" });
    const details = { wardId, intoWardId, patients: patients.length, reason };
    await writeAudit(tx, by, { action: "merge-wards", details });
    return { wardId: intoWardId };
  });
}

function moved(timeline: PatientTimeline, { fromId, intoId }: WardPair): PatientTimeline {
  const stays = timeline.stays.map((stay) => {
    const wardStays = stay.wardStays.map((one) => (one.wardId === fromId ? revise(one, { wardId: intoId }) : one));
    return { ...stay, wardStays };
  });
  return { ...timeline, stays };
}

/** Returns the days that were counted by hand on both wards, with the same counts. */
async function refuseUnfit(tx: Tx, facilityId: number, pair: WardPair): Promise<DayNumber[]> {
  const pointer = "/intoWardId";
  const { fromId, intoId } = pair;
  if (fromId === intoId) refuse("same-ward", "A unit cannot be merged into itself.", { pointer });
  for (const id of [fromId, intoId])
    if (await isGone(tx, facilityId, id))
      refuse("ward-gone", "The unit was merged into another one, or entered in error.", {
        pointer: id === intoId ? pointer : "",
        other: `ward ${id}`,
      });
  await knownWard(tx, facilityId, fromId);
  const into = await knownWard(tx, facilityId, intoId, pointer);
  if (into.closedDay !== null)
    refuse("ward-closed", `The unit was closed at the end of ${dayText(into.closedDay)}.`, { pointer });
  if ((await policies(tx, facilityId)).findLast(({ wardId }) => wardId === fromId)?.body != null)
    refuse("ward-has-policy", "The unit to merge has a policy of its own.", { other: `ward ${fromId}` });
  const counted = await countsOfBoth(tx, pair);
  const [day, ...more] = counted.flatMap((one) => (one.isSame ? [] : [one.day]));
  if (day === undefined) return counted.map((one) => one.day);
  const others = more.length === 0 ? "" : ` and on ${more.length} more`;
  return refuse("ward-counts-overlap", `The manual counts of both units differ on ${dayText(day)}${others}.`);
}

/**
 * Months under surveillance move; the same months under the same definitions are surveillance of one ward. Returns those
 * that are new to the ward that it becomes.
 */
async function moveScopes(
  tx: Tx,
  by: Parameters<typeof moveScope>[1],
  { fromId, intoId }: WardPair,
): Promise<ScopeRow[]> {
  const there = await scopesOfWard(tx, intoId);
  const moves: ScopeRow[] = [];
  for (const scope of await scopesOfWard(tx, fromId)) {
    const other = there.find((one) => isTogether(one, scope));
    if (!other) {
      await moveScope(tx, by, scope, intoId);
      moves.push(scope);
    } else if (other.edition === scope.edition && isWithin(scope, other))
      await changeScope(tx, by, scope, { voidReason: by.reason });
    else
      refuse("scope-overlaps", "Both units are under surveillance in one of these months, in different ways.", {
        other: `scope ${other.id}`,
      });
  }
  return moves;
}

/** Later than every month. */
const openEnd = "9999-12";

function isTogether(one: ScopeRow, other: ScopeRow): boolean {
  return one.fromMonth <= (other.toMonth ?? openEnd) && other.fromMonth <= (one.toMonth ?? openEnd);
}

function isWithin(inner: ScopeRow, outer: ScopeRow): boolean {
  return outer.fromMonth <= inner.fromMonth && (inner.toMonth ?? openEnd) <= (outer.toMonth ?? openEnd);
}
