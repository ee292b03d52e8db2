import { summaryOf } from "../../domain/criteria/index.ts";
import { writeAudit } from "../../store/audit.ts";
import { cultureRecords, patientsWithCultures } from "../../store/culture-records.ts";
import { determinationsOf, digestOf, type KeptDetermination } from "../../store/determinations.ts";
import { replaceWordings } from "../../store/laboratory-words.ts";
import { patientPage } from "../../store/patient-pages.ts";
import { lockPatients } from "../../store/patients.ts";
import { specimensOf } from "../../store/specimens.ts";
import type { Read } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { type DeterminingRules, determinedOf, loadDeterminingRules } from "../cultures/determining-rules.ts";

/** A case that is not kept as its record is determined now; null where one of the two does not have it. */
export interface DeterminationDifference {
  readonly caseId: number;
  readonly kept: string | null;
  readonly determined: string | null;
}

export interface DeterminationCheck {
  readonly patients: number;
  readonly cases: number;
  readonly differences: readonly DeterminationDifference[];
}

/** Patients at a time. */
const pageSize = 200;

/**
 * Determines every culture of the facility from its record and compares what is kept: what it says, and that nobody
 * changed the text since. What only time can still change is determined as of the day on which it was.
 */
export async function verifyDeterminations(act: Act): Promise<DeterminationCheck> {
  return overPages(act, (ids) => act.store.read((read) => comparePage(read, act, ids)));
}

/** {@link verifyDeterminations}, and what differs is determined anew and stored beside what was kept. */
export async function rebuildDeterminations(act: Act): Promise<DeterminationCheck> {
  const by = recording(act);
  return overPages(act, (ids) =>
    act.store.tx(async (tx) => {
      await lockPatients(tx, by.facilityId, ids);
      // What an older list of organisms read and this one does not, or the other way round.
      await replaceWordings(tx, await specimensOf(tx, ids));
      const found = await comparePage(tx, act, ids);
      if (found.differences.length === 0) return found;
      await determineAgain(tx, by, { patientIds: ids, cause: "rebuild-determinations" });
      const details = { cases: found.differences.map(({ caseId }) => caseId) };
      await writeAudit(tx, by, { action: "rebuild-determinations", patientIds: ids, details });
      return found;
    }),
  );
}

interface Expected {
  readonly body: string;
  readonly summary: string;
  /** Where an event of it could count. */
  readonly mayCount: string | null;
}

type Page = Omit<DeterminationCheck, "patients">;

async function overPages(act: Act, page: (ids: readonly number[]) => Promise<Page>): Promise<DeterminationCheck> {
  const differences: DeterminationDifference[] = [];
  let patients = 0;
  let cases = 0;
  for (let after = 0; ; ) {
    const { ids, concerned } = await act.store.read(async (read) => {
      const next = await patientPage(read, act.actor.facilityId, after, pageSize);
      return { ids: next, concerned: await patientsWithCultures(read, next) };
    });
    const last = ids.at(-1);
    if (last === undefined) return { patients, cases, differences };
    if (concerned.length > 0) {
      const found = await page(concerned);
      differences.push(...found.differences);
      cases += found.cases;
      patients += concerned.length;
    }
    after = last;
  }
}

async function comparePage(read: Read, act: Act, ids: readonly number[]): Promise<Page> {
  const rules = await loadDeterminingRules(read, act.actor.facilityId);
  const kept = await determinationsOf(read, ids);
  const expected = new Map<number, Expected>();
  for (const record of await cultureRecords(read, ids)) {
    const own = kept.filter(({ survivorId }) => survivorId === record.patientId);
    for (const { determination, mayCount } of determinedOf(record, rules, knownThrough(own, act, rules)))
      expected.set(determination.subject.id, {
        body: JSON.stringify(determination),
        summary: summaryOf(determination),
        mayCount: mayCount && JSON.stringify(mayCount),
      });
  }
  const wrong = kept.flatMap((one) => difference(one, expected.get(one.caseId)) ?? []);
  const known = new Set(kept.map(({ caseId }) => caseId));
  const missing = [...expected].filter(([caseId]) => !known.has(caseId));
  return {
    cases: kept.length,
    differences: [...wrong, ...missing.map(([caseId, { summary }]) => ({ caseId, kept: null, determined: summary }))],
  };
}

/** The day up to which a patient's cultures were determined last. */
function knownThrough(own: readonly KeptDetermination[], { now }: Act, { zone }: DeterminingRules): number {
  return own.length === 0 ? zone.dayOf(now) : Math.max(...own.map((one) => one.knownThrough));
}

function difference(
  { caseId, body, digest, summary, outcome, mayCount }: KeptDetermination,
  now: Expected | undefined,
): DeterminationDifference | null {
  if (digest !== digestOf(body)) return { caseId, kept: "a text that was changed", determined: now?.summary ?? null };
  if (outcome === "gone" && now === undefined) return null;
  if (now?.body === body && now.mayCount !== mayCount)
    return { caseId, kept: `could count in ${mayCount ?? "no one knows where"}`, determined: now.mayCount };
  return now?.body === body ? null : { caseId, kept: summary, determined: now?.summary ?? null };
}
