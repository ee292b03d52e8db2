import type { AuditAction } from "../../shared/audit-words.ts";
import type { Month } from "../../shared/day.ts";
import type { ChangedEntry, FigureChange } from "../../shared/signed-changes.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { monthOf } from "../domain/days/month.ts";
import { rowsOf } from "./columns.ts";
import { parametersFor } from "./parameters.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { daysOfMonths, type TouchedDays } from "./trace.ts";

/** An act that changed figures of a month that was signed by then. */
export interface SignedMonthChange {
  readonly id: number;
  readonly month: Month;
  /** The latest signature at that time. */
  readonly number: number;
  readonly at: Instant;
  readonly personId: number;
  readonly action: AuditAction;
  readonly entry: ChangedEntry | null;
  readonly figures: readonly FigureChange[];
  /** False once the month was signed again, or says again what was signed. */
  readonly isOpen: boolean;
}

/** Sets our advisory locks of signed months apart from those of others on the same server. */
const lockSpace = 727_074;

/** Until the end of the transaction no other one changes a signed month of the facility. Taken before any other row. */
export async function lockSignedMonths(tx: Tx, facilityId: number): Promise<void> {
  // SQLite has one writer.
  if (tx.kind === "postgresql")
    await tx.sql.run("SELECT pg_advisory_xact_lock($1::int, $2::int)", lockSpace, facilityId);
}

/** The signed months of a facility that have any of these days, each with the number of its latest signature, in order. */
export async function signedMonthsAmong(
  read: Read,
  facilityId: number,
  days: readonly TouchedDays[],
): Promise<Map<Month, number>> {
  if (days.length === 0) return new Map();
  const { values, given } = parametersFor(read);
  const facility = `facility_id = ${given(facilityId, "int")}`;
  const spans = new Map(
    days.map(({ first, last }) => {
      const span = [monthOf(first), last === null ? null : monthOf(last)] as const;
      return [span.join(), span];
    }),
  );
  const within = [...spans.values()].map(([from, to]) => {
    const since = `month >= ${given(from, "text")}`;
    return to === null ? since : `(${since} AND month <= ${given(to, "text")})`;
  });
  const where = `WHERE ${facility} AND (${within.join(" OR ")}) ORDER BY month, number`;
  const rows = await rowsOf(read, signedTable, where, ...values);
  // By number, so the last one of a month is its latest.
  return new Map(rows.map(({ month, number }) => [month as Month, number]));
}

const signedTable = { table: "signed_month", columns: { month: "text", number: "int" } } as const;

/** Which of these months are signed, in order. */
export async function signedOf(read: Read, facilityId: number, months: readonly Month[]): Promise<Month[]> {
  const days = months.map((month) => daysOfMonths({ from: month, to: month }));
  return [...(await signedMonthsAmong(read, facilityId, days)).keys()];
}

/** Writes down a change. */
export async function addSignedMonthChange(
  tx: Tx,
  { facilityId, personId, now }: Recording,
  { month, number, action, entry, figures }: Omit<SignedMonthChange, "id" | "at" | "personId" | "isOpen">,
): Promise<void> {
  await tx.db.signedMonthChange.create({
    data: {
      ...{ id: tx.newId(), facilityId, month, number, personId, action, at: new Date(now) },
      ...{
        entryKind: entry?.kind ?? null,
        entryId: entry?.id ?? null,
        patientId: entry?.patientId ?? null,
        figures: JSON.stringify(figures),
      },
    },
  });
}

/** Says that a month's changes are settled: it was signed again, or says again what was signed. */
export async function closeSignedMonthChanges(tx: Tx, facilityId: number, month: Month): Promise<void> {
  await tx.db.signedMonthChange.updateMany({ where: { facilityId, month, isOpen: true }, data: { isOpen: false } });
}

/** Changes of one month that are read: an import can make many. */
const mostRead = 200;

/** What changed a month after it was signed, the latest first. */
export async function signedMonthChanges(read: Read, facilityId: number, month: Month): Promise<SignedMonthChange[]> {
  const where = { facilityId, month };
  const orderBy = [{ at: "desc" }, { id: "desc" }] as const;
  const rows = await read.db.signedMonthChange.findMany({ where, orderBy: [...orderBy], take: mostRead });
  return rows.map(changeFrom);
}

/** The open changes of all months of a facility, the latest first. */
export async function openSignedMonthChanges(read: Read, facilityId: number): Promise<SignedMonthChange[]> {
  const where = { facilityId, isOpen: true };
  const rows = await read.db.signedMonthChange.findMany({ where, orderBy: [{ at: "desc" }, { id: "desc" }] });
  return rows.map(changeFrom);
}

type Row = Awaited<ReturnType<Read["db"]["signedMonthChange"]["findFirstOrThrow"]>>;

function changeFrom({ at, entryKind, entryId, patientId, figures, month, action, ...row }: Row): SignedMonthChange {
  const { id, number, personId, isOpen } = row;
  return {
    ...{ id, number, personId, isOpen, month: month as Month, action: action as AuditAction, at: at.getTime() },
    entry:
      entryKind === null || entryId === null ? null : ({ kind: entryKind, id: entryId, patientId } as ChangedEntry),
    figures: JSON.parse(figures) as FigureChange[],
  };
}
