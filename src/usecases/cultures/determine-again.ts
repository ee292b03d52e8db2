import type { AuditAction } from "../../../shared/audit-words.ts";
import { monthOf } from "../../domain/days/month.ts";
import { cultureRecords, type PatientRecord, patientsWithCultures } from "../../store/culture-records.ts";
import {
  addDeterminations,
  daysCounted,
  determinationsOf,
  digestOf,
  type KeptDetermination,
  type StoredDetermination,
  stillHold,
} from "../../store/determinations.ts";
import type { Recording } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { touchDays } from "../../store/trace.ts";
import { groupedBy } from "../grouped-by.ts";
import { withdrawForEvents } from "../months/none-found.ts";
import { type Determining, goneRow, nextRow, rowOf } from "./determination-rows.ts";
import { type DeterminingRules, determinedOf, loadDeterminingRules } from "./determining-rules.ts";

/**
 * Determines the cultures of locked surviving patients anew, in the transaction that changed their record. What came out
 * other than before is stored beside it, with the action that changed it; a decision about it returns to people, and a
 * confirmation that a ward had no event is withdrawn when one appears. Patients without cultures cost one question.
 */
export async function determineAgain(
  tx: Tx,
  by: Recording & { readonly reason?: string },
  { patientIds, cause }: { readonly patientIds: readonly number[]; readonly cause: AuditAction },
): Promise<StoredDetermination[]> {
  const concerned = await patientsWithCultures(tx, patientIds);
  if (concerned.length === 0) return [];
  const rules = await loadDeterminingRules(tx, by.facilityId);
  const determining = { cause, reason: by.reason ?? null, knownThrough: rules.zone.dayOf(by.now) };
  const kept = groupedBy(await determinationsOf(tx, concerned), ({ survivorId }) => survivorId);
  const records = await cultureRecords(tx, concerned);
  const compared = records.map((record) => compare(record, kept.get(record.patientId) ?? [], { rules, determining }));
  const added = compared.flatMap((one) => one.added);
  const changed = new Set(added.map(({ caseId }) => caseId));
  const were = [...kept.values()].flat().filter(({ caseId }) => changed.has(caseId));
  touchDays(tx, ...[...were, ...added].map(daysCounted));
  await addDeterminations(tx, by, added);
  const { knownThrough } = determining;
  await stillHold(
    tx,
    compared.flatMap((one) => one.lookedAtAgain),
    knownThrough,
  );
  const events = added.flatMap(({ isCauti, wardId, eventDay }) =>
    isCauti && wardId !== null && eventDay !== null ? [{ wardId, month: monthOf(eventDay) }] : [],
  );
  await withdrawForEvents(tx, by, events);
  return added;
}

/** What of a patient's cultures is to be stored, and what came out as it was and waits for more time to pass. */
function compare(
  record: PatientRecord,
  kept: readonly KeptDetermination[],
  { rules, determining }: { readonly rules: DeterminingRules; readonly determining: Determining },
): { added: StoredDetermination[]; lookedAtAgain: number[] } {
  const before = new Map(kept.map((one) => [one.caseId, one]));
  const recordedFor = new Map([...record.specimens, ...record.findings].map(({ id, patientId }) => [id, patientId]));
  const rows = determinedOf(record, rules, determining.knownThrough).map((placed) => {
    const { id } = placed.determination.subject;
    return rowOf(placed, recordedFor.get(id) ?? record.patientId, determining);
  });
  const determined = new Set(rows.map(({ caseId }) => caseId));
  const gone = kept
    .filter(({ caseId, outcome }) => !determined.has(caseId) && outcome !== "gone")
    .map((one) => goneRow(one, determining));
  const added = [...rows, ...gone].filter((row) => {
    const old = before.get(row.caseId);
    if (old === undefined || old.body !== row.body || old.placeId !== row.placeId) return true;
    // Another scope alone makes another row too: what was work is none any more, or the other way round.
    if (old.mayCount !== row.mayCount) return true;
    return old.digest !== digestOf(old.body);
  });
  const changed = new Set(added.map(({ caseId }) => caseId));
  const lookedAtAgain = kept
    .filter(({ caseId, knownThrough, settlesOn }) => !changed.has(caseId) && knownThrough < settlesOn)
    .map(({ caseId }) => caseId);
  return { added: added.map((row) => nextRow(row, before.get(row.caseId))), lookedAtAgain };
}
