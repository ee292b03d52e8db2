import Database from "better-sqlite3";
import { openStore } from "../../src/store/open-store.ts";
import type { Act } from "../../src/usecases/act.ts";
import { loadMonth } from "../../src/usecases/months/load-month.ts";
import { type BenchLine, type BenchResult, medianOf, written } from "./bench-line.ts";
import { benchFacility, historyEnd } from "./history-size.ts";
import { type LedgerSize, ledgerFile } from "./write-ledger.ts";

const dayMs = 86_400_000;
/** December 2025, the last month of the history. */
const month = { first: 20_423, last: 20_453 };

interface Measured {
  readonly oneS: number;
  readonly oneBareS: number;
  readonly allS: number;
  readonly allBareS: number;
  /** One ward's month at the beginning of the history. */
  readonly oldestS: number;
  readonly writtenS: number;
}

/**
 * A month of one ward and of all, at a short and a long history, as a person reads it: the ledger, the stays that still
 * last and what is doubtful. Throws when a sum differs from the rows counted apart.
 */
export async function benchMonths(
  size: Omit<LedgerSize, "years">,
  { shortYears, longYears }: { shortYears: number; longYears: number },
): Promise<BenchResult> {
  const short = await measure({ ...size, years: shortYears });
  const long = await measure({ ...size, years: longYears });
  const atShort = `at ${shortYears} y`;
  const atLong = `at ${longYears} y`;
  const line = (what: string, oursS: number, baseline: string, baselineS: number): BenchLine => {
    return { what, oursS, baseline, baselineS };
  };
  const bare = "bare SELECT count, sum";
  return {
    lines: [
      line(`one ward's month ${atLong}`, long.oneS, `the same ${atShort}`, short.oneS),
      line(`one ward's month ${atShort}`, short.oneS, bare, short.oneBareS),
      line(`one ward's month ${atLong}`, long.oneS, bare, long.oneBareS),
      line(`one ward's oldest month ${atLong}`, long.oldestS, "its latest month", long.oneS),
      line(`${size.wards} wards' month ${atLong}`, long.allS, `the same ${atShort}`, short.allS),
      line(`${size.wards} wards' month ${atShort}`, short.allS, bare, short.allBareS),
      line(`${size.wards} wards' month ${atLong}`, long.allS, bare, long.allBareS),
    ],
    notes: [
      `Months: ${size.bedsAWard} beds a ward, all taken. Ours is the whole answer: ledger, stays that still last, what is doubtful.`,
      written(`The ledgers of ${shortYears} and ${longYears} years`, short.writtenS + long.writtenS),
    ],
  };
}

async function measure(size: LedgerSize): Promise<Measured> {
  const { file, writtenS } = await ledgerFile(size);
  const store = openStore(file);
  const database = new Database(file, { readonly: true });
  const actor = { personId: 1, facilityId: benchFacility, roles: [], wardIds: [] };
  const act: Act = { store, actor, now: historyEnd };
  const sum = "SELECT count(*) AS patients, sum(catheter) AS catheters FROM patient_day";
  const ofWard = database.prepare(`${sum} WHERE ward_id = ? AND day >= ? AND day <= ?`);
  const ofAll = database.prepare(`${sum} WHERE ward_id IN (SELECT id FROM ward) AND day >= ? AND day <= ?`);
  const ward = Math.ceil(size.wards / 2) + 1;
  try {
    const one = await medianOf(20, () => loadMonth(act, { days: month, wardIds: [ward] }));
    const first = month.first - Math.floor(size.years * 365.25) + 31;
    const oldest = await medianOf(5, () => loadMonth(act, { days: { first, last: first + 30 }, wardIds: [ward] }));
    const oneBare = await medianOf(200, () => ofWard.get(ward, month.first, month.last) as Sums);
    const all = await medianOf(5, () => loadMonth(act, { days: month }));
    const allBare = await medianOf(20, () => ofAll.get(month.first, month.last) as Sums);
    checkSums(one.value.wards, withOpenDays(database, oneBare.value, ward));
    checkSums(all.value.wards, withOpenDays(database, allBare.value, null));

    return {
      oneS: one.seconds,
      oneBareS: oneBare.seconds,
      allS: all.seconds,
      allBareS: allBare.seconds,
      oldestS: oldest.seconds,
      writtenS,
    };
  } finally {
    database.close();
    await store.close();
  }
}

interface Sums {
  readonly patients: number;
  readonly catheters: number | null;
}

/** Adds a patient-day for every census since the arrival of a stay that still lasts, by plain arithmetic. */
function withOpenDays(database: Database.Database, ledger: Sums, ward: number | null): Sums {
  const starts = database
    .prepare("SELECT start_at FROM ward_stay WHERE end_at IS NULL AND (? IS NULL OR ward_id = ?)")
    .pluck()
    .all(ward, ward) as number[];
  const open = starts.map((start) => month.last - Math.max(month.first - 1, Math.floor(start / dayMs)));
  return { ...ledger, patients: open.reduce((sum, days) => sum + days, ledger.patients) };
}

function checkSums(
  wards: readonly { patientDays: number; catheterDays: number }[],
  { patients, catheters }: Sums,
): void {
  const ours = [sumOf(wards.map((w) => w.patientDays)), sumOf(wards.map((w) => w.catheterDays))];
  const theirs = [patients, catheters ?? 0];
  if (ours[0] !== theirs[0] || ours[1] !== theirs[1])
    throw new Error(`the month has ${ours.join(" and ")} days, counted apart ${theirs.join(" and ")}`);
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}
