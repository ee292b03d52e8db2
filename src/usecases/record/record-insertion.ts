import { catheterFaults } from "../../../shared/bounds/catheter-faults.ts";
import type { PolicyBody } from "../../../shared/policy.ts";
import { type Fault, Problem } from "../../../shared/problems.ts";
import { type InsertionRecord, type RecordField, recordFields } from "../../../shared/records.ts";
import type { CatheterKind } from "../../../shared/vocabulary.ts";
import { countsAsIndwelling } from "../../domain/counting/counts-as-catheter-day.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { stayOf } from "../../domain/timeline/find-entry.ts";
import { insertCatheter } from "../../domain/timeline/insert-catheter.ts";
import { indicationFaults } from "../../domain/timeline/note-text-faults.ts";
import type { Mark, Stay } from "../../domain/timeline/timeline.ts";
import { type Act, notInFuture } from "../act.ts";
import { type CareContext, careContext } from "./care-context.ts";
import { changePatient } from "./change-patient.ts";

export interface RecordInsertion {
  readonly stayId: number;
  readonly kind: CatheterKind;
  readonly insertedAt: Instant;
  readonly indication?: string | undefined;
  readonly sizeFr?: number | undefined;
  readonly balloonMl?: number | undefined;
  readonly number?: string | undefined;
  readonly record?: InsertionRecord | undefined;
  /** Pointers of unusual values that somebody has checked. */
  readonly confirm?: readonly string[] | undefined;
  readonly marks?: readonly Mark[];
}

/**
 * Records an insertion with what was written down of it. What the policy of the ward does not require may be left out.
 * Refuses, all faults at once: `record-incomplete`, `indication-unknown`, `out-of-bounds`, `unusual-value`; and
 * `in-the-future`, `outside-stay`, `entry-voided`, `not-found`.
 */
export function recordInsertion(act: Act, input: RecordInsertion): Promise<{ catheterId: number; version: number }> {
  const { stayId, insertedAt, kind, indication = null, sizeFr = null, balloonMl = null } = input;
  const { number = null, record, confirm = [], marks = [] } = input;
  notInFuture(act.now, { insertedAt });
  let care: CareContext;
  return changePatient(act, {
    action: "record-insertion",
    key: { stayId },
    details: { stayId },
    first: async (tx) => {
      care = await careContext(tx, act.actor.facilityId, { stayId });
    },
    decide: (timeline, newId) => {
      const policy = care.policyAt(stayOf(timeline, stayId), insertedAt);
      const [first, ...more] = [
        ...requiredFaults(input, policy),
        ...indicationFaults("/indication", indication, policy),
        ...catheterFaults(
          { sizeFr, balloonMl, ...record },
          { kind, ageDays: care.ageDays(insertedAt), confirm, at: "/record" },
        ),
      ];
      if (first) throw new Problem(first, ...more);
      const catheterId = newId();
      const said = { kind, insertedAt, indication, sizeFr, balloonMl, number, marks, inPlaceOnArrival: false };
      const written = { ...said, insertionRecord: record ?? null };
      return {
        timeline: insertCatheter(timeline, { ...written, stayId, catheterId }),
        answer: { catheterId, version: 1 },
      };
    },
  });
}

/** A fault for each field that the policy requires and nobody recorded. Other kinds of catheters have no such policy. */
function requiredFaults(input: RecordInsertion, policy: PolicyBody): Fault[] {
  if (!countsAsIndwelling(input.kind)) return [];
  const recorded: Partial<Record<RecordField, unknown>> = {
    ...input.record,
    ...{ sizeFr: input.sizeFr, balloonMl: input.balloonMl, indication: input.indication },
  };
  const own: readonly RecordField[] = ["sizeFr", "balloonMl", "indication"];
  return policy.requiredFields
    .filter((field) => recorded[field] === undefined)
    .map((field) => ({
      code: "record-incomplete",
      pointer: own.includes(field) ? `/${field}` : `/record/${field}`,
      detail: `${recordFields[field]}: the policy of the unit asks for it, and it is not recorded.`,
    }));
}

export interface RecordOnArrival {
  readonly stayId: number;
  readonly kind: CatheterKind;
  readonly foundAt: Instant;
  readonly indication?: string | undefined;
  readonly marks?: readonly Mark[];
}

/** Records a catheter that was in place when the patient came, found by somebody. Refuses as {@link recordInsertion}. */
export function recordCatheterOnArrival(
  act: Act,
  input: RecordOnArrival,
): Promise<{ catheterId: number; version: number }> {
  const { stayId, kind, foundAt, indication = null, marks = [] } = input;
  notInFuture(act.now, { foundAt });
  let care: CareContext;
  return changePatient(act, {
    action: "record-catheter-on-arrival",
    key: { stayId },
    details: { stayId },
    first: async (tx) => {
      care = await careContext(tx, act.actor.facilityId, { stayId });
    },
    decide: (timeline, newId) => {
      const stay = stayOf(timeline, stayId);
      const [first, ...more] = [
        ...foundOutside(stay, foundAt),
        ...indicationFaults("/indication", indication, care.policyAt(stay, foundAt)),
      ];
      if (first) throw new Problem(first, ...more);
      const catheterId = newId();
      const said = { kind, indication, lastSeenAt: foundAt, insertedAt: null, inPlaceOnArrival: true, marks };
      return {
        timeline: insertCatheter(timeline, { ...said, stayId, catheterId }),
        answer: { catheterId, version: 1 },
      };
    },
  });
}

/** Who found it says that it was in place then, which is within the stay. */
function foundOutside({ id, admittedAt, dischargedAt }: Stay, foundAt: Instant): Fault[] {
  if (foundAt >= admittedAt && (dischargedAt === null || foundAt <= dischargedAt)) return [];
  const detail = `The patient was not here ${foundAt < admittedAt ? "yet" : "any more"} at that time.`;
  return [{ code: "outside-stay", pointer: "/foundAt", detail, other: `stay ${id}` }];
}
