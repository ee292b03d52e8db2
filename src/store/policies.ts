import type { PolicyBody } from "../../shared/policy.ts";
import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import { rowsOf } from "./columns.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

/** What the facility or a ward wants done from a day on. */
export interface PolicyRow {
  readonly id: number;
  /** null: the facility's own. */
  readonly wardId: number | null;
  readonly number: number;
  readonly fromDay: DayNumber;
  /** null: back to the level above. */
  readonly body: PolicyBody | null;
  readonly reason: string;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

const table = {
  table: "policy_version",
  columns: {
    id: "int",
    wardId: "int",
    number: "int",
    fromDay: "int",
    body: "text?",
    reason: "text",
    recordedAt: "instant",
    recordedBy: "int",
  },
} as const;

/**
 * All policy versions of a facility and its wards: the facility's first, then by ward, each in the order of its numbers.
 * Ids would not do: programs draw them from blocks of their own.
 */
export async function policies(read: Read, facilityId: number): Promise<PolicyRow[]> {
  const rows = await rowsOf(read, table, "WHERE facility_id = $1 ORDER BY ward_id, number", facilityId);
  return rows.map(({ wardId, body, ...row }) => ({
    ...row,
    wardId: wardId === 0 ? null : wardId,
    body: body === null ? null : (JSON.parse(body) as PolicyBody),
  }));
}

/** Adds the next version of a facility's or ward's policy. */
export async function addPolicy(
  tx: Tx,
  by: Recording,
  policy: Omit<PolicyRow, "recordedAt" | "recordedBy">,
): Promise<void> {
  const { id, wardId, number, fromDay, body, reason } = policy;
  touchDays(tx, { first: fromDay, last: null });
  await tx.db.policyVersion.create({
    data: {
      ...{ id, number, fromDay, reason, facilityId: by.facilityId, recordedBy: by.personId },
      wardId: wardId ?? 0,
      body: body === null ? null : JSON.stringify(body),
      recordedAt: new Date(by.now),
    },
  });
}
