import type { ItemState, NoteKind, ReviewOutcome } from "../../../shared/catheter-words.ts";
import type { PolicyBody } from "../../../shared/policy.ts";
import type { NecessityPatient, NecessityRules } from "../../../src/domain/necessity/facts.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { builtInPolicy, type PolicyInForce } from "../../../src/domain/policy/policy-in-force.ts";
import type { CatheterNote } from "../../../src/domain/timeline/note.ts";
import { newEntry } from "../../../src/domain/timeline/timeline.ts";
import { dayOf } from "../../reference/day-text.ts";
import { at, march, newYork, recordOf } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";

const noteLine =
  /^(review|confirmation|care-check|urine-output) (\d+) (\d\d)\/(\d\d:\d\d)(?: (keep|remove|ask))?(?: for ([a-z-]+))?(?: ([a-z-]+=[a-z-]+(?:,[a-z-]+=[a-z-]+)*))?(?: written (\d\d)\/(\d\d:\d\d))?( voided)?$/;

/**
 * Notes as lines say them, numbered from 1: `review 3 05/09:00 keep for other`, `care-check 3 05/09:00 secured=kept`.
 * The 3 is the catheter, the time one of March 2024 in New York; `written 06/08:00` when it was written down later.
 */
function notesFrom(lines: readonly string[]): CatheterNote[] {
  return lines.map((line, i) => {
    const parts = noteLine.exec(line);
    if (!parts) throw new Error(`nothing is known of "${line}"`);
    const [, kind, catheterId, day = "", time = "", outcome, indication, items, laterDay, laterTime, voided] = parts;
    const happened = march(day, time);
    return {
      ...newEntry,
      id: i + 1,
      catheterId: Number(catheterId),
      kind: kind as NoteKind,
      at: happened,
      writtenAt: laterDay && laterTime ? march(laterDay, laterTime) : happened,
      writtenBy: 1,
      outcome: (outcome ?? null) as ReviewOutcome | null,
      indication: indication ?? null,
      items: items
        ? (Object.fromEntries(items.split(",").map((item) => item.split("="))) as Record<string, ItemState>)
        : null,
      amountMl: null,
      remark: null,
      voidReason: voided ? "wrong patient" : null,
    };
  });
}

/** A patient's record with notes, from lines of both. */
export function patientFrom(lines: readonly string[], notes: readonly string[] = []): NecessityPatient {
  return { ...recordOf(lines), notes: notesFrom(notes) };
}

/** A policy that differs from the built-in one. */
export function policyWith(changes: Partial<PolicyBody>, of: Partial<PolicyInForce> = {}): PolicyInForce {
  return { ...builtInPolicy, number: 1, fromDay: dayOf("2024-01-01"), ...of, body: { ...defaultPolicy, ...changes } };
}

/** Rules in New York with a policy for all wards, or with one for each ward. */
export function rulesWith(policy: PolicyInForce | ((wardId: number) => PolicyInForce) = builtInPolicy): NecessityRules {
  const { isInpatient } = at("00:00");
  return {
    zone: newYork,
    dayExists: () => true,
    isInpatient,
    policyOn: (wardId) => (typeof policy === "function" ? policy(wardId) : policy),
    wardName: (wardId) => Object.entries(wardIds).find(([, id]) => id === wardId)?.[0] ?? "unknown",
  };
}

/** The number of a day of March 2024. */
export const marchDay = (day: string) => dayOf(`2024-03-${day}`);
