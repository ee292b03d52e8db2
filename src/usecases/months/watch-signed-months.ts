import type { Month } from "../../../shared/day.ts";
import type { MonthReport } from "../../../shared/month-report.ts";
import { Problem } from "../../../shared/problems.ts";
import type { ChangedEntry, FigureChange, SignedChanges } from "../../../shared/signed-changes.ts";
import { canonicalText } from "../../domain/reports/canonical-text.ts";
import { monthDifferences } from "../../domain/reports/month-differences.ts";
import type { Recording } from "../../store/patients.ts";
import { everybody } from "../../store/people.ts";
import {
  addSignedMonthChange,
  closeSignedMonthChanges,
  lockSignedMonths,
  signedMonthsAmong,
} from "../../store/signed-month-changes.ts";
import { signatures } from "../../store/signed-months.ts";
import type { Store, Tx, TxOptions } from "../../store/store.ts";
import type { Trace, TracedAct } from "../../store/trace.ts";
import type { Reach } from "../reach.ts";
import { figuresWithin } from "./month-changes.ts";
import { readFigures } from "./read-figures.ts";
import { digestOf, seenDigest } from "./read-month-figures.ts";

/** A person who acts in a page is asked first. */
export interface Asking {
  /** What the person says is right: the digits of an earlier refusal. */
  readonly acknowledged: string | null;
  /** The wards of which the person may see figures. */
  readonly reach: Reach;
}

/** More signed months than these are written down as changed without their figures: one act must not keep others waiting. */
const mostCompared = 24;

/** Each run knows the months that the one before touched, so the second one ends it unless others change them meanwhile. */
const mostRuns = 10;

/**
 * The same store, which looks after months that were signed: a transaction that changes a figure of one writes down
 * which, with the act that caused it. With `asking` it is refused as `changes-signed-month` unless the person has
 * acknowledged these very figures; what only passing time changed asks no one.
 * A transaction that touches no signed month costs one question to an index. One that does runs twice, the second time
 * with the figures before it, and no other transaction changes a signed month of the facility meanwhile.
 */
export function watchSignedMonths(opened: Store, asking?: Asking): Store {
  // A store that is watched already is not watched twice: the outer run would be waited for by the inner one for ever.
  const store = unwatched.get(opened) ?? opened;
  const tx = async <T>(work: (tx: Tx) => Promise<T>, options: TxOptions = {}): Promise<T> => {
    let touched: Touched | null = null;
    for (let runs = 0; runs < mostRuns; runs++) {
      const earlier: Touched | null = touched;
      // One id for each change that is written down.
      const enough = earlier ? { ...options, ids: (options.ids ?? 16) + earlier.months.length } : options;
      try {
        return await store.tx((opened) => watched({ store, tx: opened, earlier, asking }, work), enough);
      } catch (thrown) {
        if (!(thrown instanceof Touched)) throw thrown;
        touched = thrown;
      }
    }
    throw new Error(`an act touched other signed months in each of ${mostRuns} runs`);
  };
  const watchedStore = { ...store, tx };
  unwatched.set(watchedStore, store);
  return watchedStore;
}

/** What each watched store watches. */
const unwatched = new WeakMap<Store, Store>();

/** Thrown out of a transaction that touches signed months whose figures before it are not known; never leaves this file. */
class Touched {
  readonly by: Recording;
  readonly months: readonly Month[];
  constructor(by: Recording, months: readonly Month[]) {
    this.by = by;
    this.months = months;
  }
}

interface Watching {
  readonly store: Store;
  readonly tx: Tx;
  /** What an earlier run of the same work touched. */
  readonly earlier: Touched | null;
  readonly asking: Asking | undefined;
}

/** What an act changes of one signed month. */
interface Change {
  readonly month: Month;
  /** The latest signature. */
  readonly number: number;
  readonly figures: readonly FigureChange[];
  /** Stands for the month as it is afterwards; null where it was not compared. */
  readonly seen: string | null;
}

async function watched<T>(watching: Watching, work: (tx: Tx) => Promise<T>): Promise<T> {
  const { tx, earlier } = watching;
  const before = new Map<Month, MonthReport>();
  if (earlier) {
    await lockSignedMonths(tx, earlier.by.facilityId);
    for (const month of earlier.months.slice(-mostCompared))
      before.set(month, await reportOf(watching, earlier.by, month));
  }
  const result = await work(tx);
  const { touched, act } = tx.trace;
  tx.trace.touched = [];
  if (touched.length === 0) return result;
  if (act === null) throw new Error("something was written without an entry in the audit trail");
  const changes = await changesOf(watching, { touched, act, before });
  const { asking } = watching;
  if (changes.length > 0 && asking && act.action !== "determine-again")
    await refuseUnacknowledged(tx, act.by, changes, asking);
  for (const change of changes) await writeDown(tx, act, change);
  return result;
}

async function reportOf({ store, tx }: Watching, by: Recording, month: Month): Promise<MonthReport> {
  const actor = { personId: by.personId, facilityId: by.facilityId, roles: [], wardIds: [] };
  return (await readFigures(tx, { store, actor, now: by.now }, { month })).report;
}

async function changesOf(
  watching: Watching,
  { touched, act, before }: { touched: Trace["touched"]; act: TracedAct; before: ReadonlyMap<Month, MonthReport> },
): Promise<Change[]> {
  const signed = await signedMonthsAmong(watching.tx, act.by.facilityId, touched);
  const months = [...signed.keys()];
  const compared = new Set(months.slice(-mostCompared));
  if (months.some((month) => compared.has(month) && !before.has(month))) throw new Touched(act.by, months);
  const changes: Change[] = [];
  for (const [month, number] of signed) {
    const was = before.get(month);
    if (!was) {
      changes.push({ month, number, figures: [], seen: null });
      continue;
    }
    const now = await reportOf(watching, act.by, month);
    const figures = monthDifferences(was, now).map(({ signed: earlier, now: later, ...of }) => ({
      ...{ ...of, before: earlier, after: later },
    }));
    if (figures.length > 0) changes.push({ month, number, figures, seen: seenDigest(now) });
  }
  return changes;
}

async function refuseUnacknowledged(
  tx: Tx,
  { facilityId }: Recording,
  changes: readonly Change[],
  { acknowledged, reach }: Asking,
): Promise<void> {
  // By code: a unit that is added has another number each time it is tried.
  const shownTo = changes.map(({ seen: _, figures, ...of }) => ({
    ...{ ...of, figures: figures.map(({ wardId: __, ...figure }) => figure) },
  }));
  const acknowledge = digestOf(canonicalText(shownTo));
  if (acknowledged === acknowledge) return;
  const people = await everybody(tx, facilityId);
  const months: SignedChanges["months"] = [];
  for (const { month, figures } of changes) {
    const latest = (await signatures(tx, facilityId, month)).at(-1);
    const shown = figuresWithin(figures, reach.wardIds);
    months.push({
      ...{ month, figures: shown, hasOthers: shown.length < figures.length || figures.length === 0 },
      signedAt: new Date(latest?.signedAt ?? 0).toISOString(),
      signedBy: people.find(({ personId }) => personId === latest?.signedBy)?.name ?? "",
    });
  }
  const detail = `It changes the figures of ${changes.map(({ month }) => month).join(", ")}, after the signature.`;
  const problem = new Problem({ code: "changes-signed-month", pointer: "", detail });
  problem.signed = { acknowledge, months };
  throw problem;
}

async function writeDown(tx: Tx, act: TracedAct, { month, number, figures, seen }: Change): Promise<void> {
  const { by, action } = act;
  await addSignedMonthChange(tx, by, { month, number, action, entry: entryOf(act), figures });
  // The month says again what was signed.
  const latest = (await signatures(tx, by.facilityId, month)).at(-1);
  if (latest?.seen === seen) await closeSignedMonthChanges(tx, by.facilityId, month);
}

/** What an act is about, as far as it is one thing. */
function entryOf({ details, patientIds = [] }: TracedAct): ChangedEntry | null {
  const { importId, caseId, catheterId, wardId } = details as Readonly<Record<string, unknown>>;
  const patientId = patientIds[0] ?? null;
  const kinds = { import: importId, case: caseId, catheter: catheterId } as const;
  for (const [kind, id] of Object.entries(kinds))
    if (typeof id === "number")
      return { kind: kind as keyof typeof kinds, id, patientId: kind === "import" ? null : patientId };
  if (patientIds.length > 2) return null;
  if (patientId !== null) return { kind: "patient", id: patientId, patientId };
  return typeof wardId === "number" ? { kind: "ward", id: wardId, patientId } : null;
}
