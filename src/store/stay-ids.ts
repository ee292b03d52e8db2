import type { Instant } from "../domain/days/day-number.ts";
import { unindexed } from "./bulk.ts";
import { parametersFor } from "./parameters.ts";
import type { Read } from "./store.ts";

/** Which stays of a facility are asked for; voided ones never are. */
export interface StayQuestion {
  readonly facilityId: number;
  /** Admitted before this instant. */
  readonly admittedBefore: Instant;
  /** Ended at this instant or later, beside those that have not ended; null: only those that have not. */
  readonly endedFrom: Instant | null;
  /** Only stays that were on one of these wards; all when left out. */
  readonly wardIds?: readonly number[] | undefined;
}

/** Stays that last longer are few, and have an index of their own. */
const shortMs = 62 * 86_400_000;

/** Which stays one statement finds: those that last, or those that ended from an instant on, by how long they were. */
type Part = "open" | { readonly endedFrom: Instant; readonly length: "short" | "long" };

/**
 * The ids of stays in a stretch of time, in order. Asked in questions that the databases can only answer from the right
 * index, so that none reads more stays when the facility has a longer history: those that last; short ones, by their
 * admission within the days before; long ones, of which there are few.
 */
export async function stayIds(read: Read, question: StayQuestion): Promise<number[]> {
  const { endedFrom } = question;
  const ids = await idsOf(read, question, "open");
  if (endedFrom !== null)
    for (const length of ["short", "long"] as const) ids.push(...(await idsOf(read, question, { endedFrom, length })));
  return ids.sort((a, b) => a - b);
}

async function idsOf(read: Read, question: StayQuestion, part: Part): Promise<number[]> {
  const { facilityId, admittedBefore, wardIds } = question;
  const short = part !== "open" && part.length === "short";
  const { values, given, instant, ids } = parametersFor(read);
  const where = [
    `s.facility_id = ${given(facilityId, "int")} AND s.void_key = 0`,
    // The sign keeps the index of admissions out of it: only short stays are found by their admission.
    `${short ? "" : unindexed(read)}s.admitted_at < ${instant(admittedBefore)}`,
  ];
  if (part === "open") where.push("s.discharged_at IS NULL");
  else if (part.length === "long") where.push(`${endOfLong(read)} >= ${instant(part.endedFrom)}`);
  else {
    where.push(`${unindexed(read)}s.discharged_at >= ${instant(part.endedFrom)}`, `${endOfLong(read)} IS NULL`);
    // A short stay that ended from then on was admitted not long before.
    where.push(`s.admitted_at >= ${instant(part.endedFrom - shortMs)}`);
  }
  if (wardIds) {
    // The sign keeps the index of wards out of it: a stay has few ward stays, a ward has many.
    where.push(`EXISTS (SELECT 1 FROM ward_stay w WHERE w.stay_id = s.id AND +w.ward_id IN ${ids(wardIds)})`);
  }
  const rows = await read.sql.rows<{ id: number | bigint }>(
    `SELECT s.id FROM stay s WHERE ${where.join(" AND ")}`,
    ...values,
  );
  return rows.map((row) => Number(row.id));
}

/** The end of a long stay, as its index has it; null for a short one. */
function endOfLong({ kind }: Read): string {
  const longest = kind === "sqlite" ? shortMs : "INTERVAL '62 days'";
  return `(CASE WHEN s.discharged_at - s.admitted_at > ${longest} THEN s.discharged_at END)`;
}
