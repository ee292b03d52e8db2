import { refuse } from "../../../shared/problems.ts";
import {
  type CatheterChanges,
  correctCatheter as decideCatheter,
  correctStay as decideStay,
  correctWardStay as decideWardStay,
  type StayChanges,
  type WardStayChanges,
} from "../../domain/timeline/correct-entry.ts";
import { wardStayOf } from "../../domain/timeline/find-entry.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { stayNumberTaken } from "../../store/stays.ts";
import { wards } from "../../store/wards.ts";
import { type Act, notInFuture } from "../act.ts";
import { knownWard } from "../wards/known-ward.ts";
import { openWards } from "../wards/open-ward.ts";
import { changePatient } from "./change-patient.ts";

/** Why an entry is corrected, and the version that the person saw, when they saw one. */
interface Correction<Changes> {
  /** Of the new times. */
  readonly marks?: readonly Mark[];
  readonly changes: Changes;
  readonly reason: string;
  readonly seenVersion?: number | undefined;
}

/** Corrects a stay. Refuses `stale-version`, `stay-number-taken` and what contradicts the rest of the record. */
export function correctStay(
  act: Act,
  input: { stayId: number } & Correction<StayChanges>,
): Promise<{ stayId: number; version: number }> {
  const { stayId, changes, reason, seenVersion, marks = [] } = input;
  const { admittedAt, dischargedAt } = changes;
  notInFuture(act.now, { admittedAt, dischargedAt });
  return changePatient(act, {
    action: "correct-stay",
    key: { stayId },
    subject: { kind: "stay", id: stayId, seenVersion },
    details: { fields: Object.keys(changes) },
    reason,
    first: async (tx) => {
      const other =
        changes.number === undefined ? null : await stayNumberTaken(tx, act.actor.facilityId, changes.number);
      if (other !== null && other !== stayId)
        refuse("stay-number-taken", "Another stay has this number.", { pointer: "/number", other: `stay ${other}` });
    },
    decide: (timeline) => ({ timeline: decideStay(timeline, stayId, { ...changes, marks }), answer: { stayId } }),
  });
}

/** Corrects a ward stay. Refuses `stale-version`, `ward-closed` for one that begins after the ward's last day, and what contradicts the rest of the record. */
export function correctWardStay(
  act: Act,
  input: { wardStayId: number } & Correction<WardStayChanges>,
): Promise<{ wardStayId: number; version: number }> {
  const { wardStayId, changes, reason, seenVersion, marks = [] } = input;
  const { startAt, endAt, wardId } = changes;
  const { facilityId } = act.actor;
  notInFuture(act.now, { startAt, endAt });
  const comes = wardId !== undefined || startAt !== undefined;
  let refuseClosed: Awaited<ReturnType<typeof openWards>> = () => {};
  return changePatient(act, {
    action: "correct-ward-stay",
    key: { wardStayId },
    subject: { kind: "ward-stay", id: wardStayId, seenVersion },
    details: { fields: Object.keys(changes) },
    reason,
    first: async (tx) => {
      if (wardId !== undefined) await knownWard(tx, facilityId, wardId, "/toWardId");
      if (comes) refuseClosed = await openWards(tx, facilityId, await wards(tx, facilityId));
    },
    decide: (timeline) => {
      const after = decideWardStay(timeline, wardStayId, { ...changes, marks });
      const { wardStay } = wardStayOf(after, wardStayId);
      const pointer = wardId === undefined ? "/startAt" : "/toWardId";
      refuseClosed({ wardId: wardStay.wardId, at: wardStay.startAt, pointer });
      return { timeline: after, answer: { wardStayId } };
    },
  });
}

/** Corrects a catheter. Refuses `stale-version` and what contradicts the rest of the record. */
export function correctCatheter(
  act: Act,
  input: { catheterId: number } & Correction<CatheterChanges>,
): Promise<{ catheterId: number; version: number }> {
  const { catheterId, changes, reason, seenVersion } = input;
  const { insertedAt, removedAt, removedAfterAt, removedBeforeAt, lastSeenAt } = changes;
  notInFuture(act.now, { insertedAt, removedAt, removedAfterAt, removedBeforeAt, lastSeenAt });
  return changePatient(act, {
    action: "correct-catheter",
    key: { catheterId },
    subject: { kind: "catheter", id: catheterId, seenVersion },
    details: { fields: Object.keys(changes) },
    reason,
    decide: (timeline) => ({ timeline: decideCatheter(timeline, catheterId, changes), answer: { catheterId } }),
  });
}
