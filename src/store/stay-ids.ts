import type { Instant } from "../domain/days/day-number.ts";
import { idList } from "./bulk.ts";
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

/**
 * The ids of stays in a stretch of time, in order. Asked in two questions that SQLite can only answer from the right
 * index: without statistics it would read every stay of the facility for a choice between two ends, and every stay of
 * a ward for each stay that it finds.
 */
export async function stayIds(read: Read, question: StayQuestion): Promise<number[]> {
  const open = await idsOf(read, question, null);
  const ended = question.endedFrom === null ? [] : await idsOf(read, question, question.endedFrom);
  return [...open, ...ended].sort((a, b) => a - b);
}

/** `endedFrom` null: the stays that have not ended. */
async function idsOf(read: Read, question: StayQuestion, endedFrom: Instant | null): Promise<number[]> {
  const { facilityId, admittedBefore, wardIds } = question;
  const parameters: unknown[] = [];
  const mark = (value: unknown, type: string) => {
    const place = parameters.push(value);
    return read.kind === "sqlite" ? "?" : `$${place}::${type}`;
  };
  const instant = (value: Instant) =>
    read.kind === "sqlite" ? mark(value, "") : mark(new Date(value).toISOString(), "timestamp");
  const where = [
    `s.facility_id = ${mark(facilityId, "int")} AND s.void_key = 0`,
    `s.admitted_at < ${instant(admittedBefore)}`,
    endedFrom === null ? "s.discharged_at IS NULL" : `s.discharged_at >= ${instant(endedFrom)}`,
  ];
  if (wardIds) {
    const wards = idList(read, parameters.push(JSON.stringify(wardIds)));
    // The sign keeps the index of wards out of it: a stay has few ward stays, a ward has many.
    where.push(`EXISTS (SELECT 1 FROM ward_stay w WHERE w.stay_id = s.id AND +w.ward_id IN ${wards})`);
  }
  const rows = await read.db.$queryRawUnsafe<{ id: number | bigint }[]>(
    `SELECT s.id FROM stay s WHERE ${where.join(" AND ")}`,
    ...parameters,
  );
  return rows.map((row) => Number(row.id));
}
