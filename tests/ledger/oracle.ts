import { censusInstants, localDay } from "./census-instants.ts";
import type { CatheterRecord, HospitalRecord, LedgerRow, StayRecord, WardStayRecord } from "./read-record.ts";

/** What the count by census instants says. */
export interface Count {
  /** The rows that the ledger must hold: of stretches that are over. In the order of patient and day. */
  readonly closed: readonly LedgerRow[];
  /** The rows of stretches that still last, up to `now`. */
  readonly open: readonly LedgerRow[];
  /** How many of all these rows are days of a bed that was held during a procedure. */
  readonly held: number;
}

/**
 * A count of patient-days and catheter-days that shares nothing with the ledger's own: at each census instant it asks
 * of each stay where the patient was. Written from the rules:
 * a patient is on a ward at a census when start <= census < end; time off the wards keeps the day of the ward before
 * it when it is a procedure, and counts nowhere otherwise; only wards that are inpatient wards on that day count; a
 * catheter-day needs an indwelling urethral catheter in place at the census; voided entries count nowhere; the days
 * of merged patients are the survivor's.
 * Source: counts at one time a day, at most one catheter-day a patient and day: CDC Patient Safety Component Manual,
 * chapter 7, table 2 (from memory).
 */
export function countDays(record: HospitalRecord, now: number): Count {
  const wardStays = record.wardStays.filter((w) => w.voidKey === 0);
  const instants = wardStays.flatMap((w) => [w.startAt, w.endAt ?? now]);
  if (instants.length === 0) return { closed: [], open: [], held: 0 };
  const first = localDay(record.zone, Math.min(...instants)) - 2;
  const last = localDay(record.zone, Math.max(now, ...instants)) + 2;
  const days = censusInstants(record, first, last);
  const found = record.stays
    .filter((stay) => stay.voidKey === 0)
    .flatMap((stay) => days.flatMap((census) => dayOfStay(record, stay, { ...census, now })));
  refuseTwice(found.map(({ row }) => row));
  const rows = (open: boolean) =>
    found
      .filter((f) => f.open === open)
      .map((f) => f.row)
      .sort((a, b) => a.patientId - b.patientId || a.day - b.day);
  return { closed: rows(false), open: rows(true), held: found.filter((f) => f.held).length };
}

interface Found {
  readonly row: LedgerRow;
  readonly open: boolean;
  readonly held: boolean;
}

function dayOfStay(
  record: HospitalRecord,
  stay: StayRecord,
  { day, at, now }: { day: number; at: number; now: number },
): Found[] {
  if (at < stay.admittedAt || (stay.dischargedAt !== null && at >= stay.dischargedAt)) return [];
  const place = placeAt(
    stay,
    record.wardStays.filter((w) => w.stayId === stay.id && w.voidKey === 0),
    at,
  );
  if (!place || (place.open && at > now) || !isInpatient(record, place.wardId, day)) return [];
  const patient = record.patients.find((p) => p.id === stay.patientId);
  if (!patient) throw new Error(`stay ${stay.id} belongs to no patient`);
  const catheter = record.catheters.some((c) => c.stayId === stay.id && countsAt(c, stay, at));
  const row = { patientId: patient.survivorId, day, wardId: place.wardId, stayId: stay.id, catheter };
  return [{ row, open: place.open, held: place.held }];
}

interface Place {
  readonly wardId: number;
  /** True while nothing has ended the stretch. */
  readonly open: boolean;
  /** Off the ward, which keeps the bed. */
  readonly held: boolean;
}

function placeAt(stay: StayRecord, wardStays: readonly WardStayRecord[], at: number): Place | null {
  const on = wardStays.filter((w) => w.startAt <= at && (w.endAt === null || at < w.endAt));
  if (on.length > 1) throw new Error(`the patient of stay ${stay.id} is on two wards at once`);
  if (on[0]) return { wardId: on[0].wardId, open: on[0].endAt === null, held: false };
  const left = wardStays.filter((w) => w.endAt !== null && w.endAt <= at).sort(byTime);
  const before = left.at(-1);
  if (before?.absenceAfter !== "procedure") return null;
  const isBack = wardStays.some((w) => w.startAt > at);
  return { wardId: before.wardId, open: !isBack && stay.dischargedAt === null, held: true };
}

function byTime(a: WardStayRecord, b: WardStayRecord): number {
  return a.startAt - b.startAt || (a.endAt ?? 0) - (b.endAt ?? 0) || a.id - b.id;
}

function isInpatient({ settings }: HospitalRecord, wardId: number, day: number): boolean {
  const said = settings.filter((s) => s.wardId === wardId && s.fromDay <= day);
  return said.sort((a, b) => b.fromDay - a.fromDay)[0]?.setting === "inpatient";
}

function countsAt(catheter: CatheterRecord, stay: StayRecord, at: number): boolean {
  if (catheter.voidKey !== 0 || catheter.kind !== "indwelling-urethral") return false;
  if (at < (catheter.insertedAt ?? stay.admittedAt)) return false;
  const gone = catheter.removedAt ?? catheter.removedAfterAt;
  return gone === null || at < gone;
}

function refuseTwice(rows: readonly LedgerRow[]): void {
  const seen = new Set<string>();
  for (const { patientId, day } of rows) {
    const key = `${patientId} ${day}`;
    if (seen.has(key)) throw new Error(`patient ${patientId} is counted twice on day ${day}`);
    seen.add(key);
  }
}
