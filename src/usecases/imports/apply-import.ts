import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import type { PatientLine } from "../../domain/intake/intake-line.ts";
import type { Outcome } from "../../domain/intake/outcome.ts";
import { writeAudit } from "../../store/audit.ts";
import { putDailyCounts } from "../../store/daily-counts.ts";
import { facility, lockFacility } from "../../store/facilities.ts";
import { type LineOutcome, settleLines } from "../../store/import-lines.ts";
import { importOf, setImportState, setProgress } from "../../store/imports.ts";
import { completePatient, ensurePatients, lockPatients, patientsByIdentifier } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { careRules } from "./care-rules.ts";
import { countOutcome, settledAs, yieldToOthers } from "./check-import.ts";
import { refuseFutureLines } from "./future-lines.ts";
import type { ImportOptions } from "./intake-item.ts";
import { placeImport } from "./place-lines.ts";
import { type PatientGroup, planGroups } from "./plan-group.ts";
import { nextChunk, type WaitingChunk, wardsNamed } from "./read-waiting.ts";
import { storePlanned } from "./store-planned.ts";
import { describeWardLine, ensureWards } from "./ward-lines.ts";
import { wardNames } from "./ward-names.ts";

/**
 * Applies the waiting lines in short transactions, so that others can record meanwhile. Each line is settled in the
 * transaction that stores it: broken off at any point, the same call goes on where it stopped.
 */
export async function applyImport(
  act: Act,
  { importId, total }: { importId: number; total: number },
  options: Pick<ImportOptions, "assumeInpatient" | "onProgress">,
): Promise<void> {
  await act.store.tx(async (tx) => {
    await setImportState(tx, importId, "applying");
    await setProgress(tx, importId, { done: 0, total });
  });
  let done = 0;
  let idsNeeded = 64;
  let after = "";
  options.onProgress?.({ phase: "applying", done, total });
  for (;;) {
    const step = await act.store.tx((tx) => applyNext(tx, act, { importId, options, idsNeeded, after, done, total }), {
      ids: idsNeeded,
    });
    if (step === "done") return placeImport(act, importId);
    if (step.idsNeeded > 0) {
      idsNeeded = step.idsNeeded;
      continue;
    }
    after = step.lastKey;
    done += step.lineCount;
    options.onProgress?.({ phase: "applying", done, total });
    await yieldToOthers();
  }
}

interface Step {
  readonly importId: number;
  readonly options: Pick<ImportOptions, "assumeInpatient">;
  readonly idsNeeded: number;
  /** The last group that was applied. */
  readonly after: string;
  /** How many lines were applied by this program, and how many it has to apply. */
  readonly done: number;
  readonly total: number;
}

/** Applies one chunk, or says how many ids it takes when that is more than were asked for. */
async function applyNext(
  tx: Tx,
  act: Act,
  { importId, options, idsNeeded, after, done, total }: Step,
): Promise<"done" | { lineCount: number; idsNeeded: number; lastKey: string }> {
  // Taking the import's row keeps another process from applying the same lines.
  await setImportState(tx, importId, "applying");
  const { facilityId } = act.actor;
  const sourceId = (await importOf(tx, facilityId, importId))?.sourceId ?? null;
  const chunk = await nextChunk(tx, importId, { after, wardOf: await wardNames(tx, facilityId, { sourceId }) });
  if (!chunk) return "done";
  // A line makes at most a patient, a stay and one entry in it, or a ward with its setting.
  const needed = chunk.lineCount * 4 + 64;
  if (needed > idsNeeded) return { lineCount: 0, idsNeeded: needed, lastKey: after };
  await applyChunk(tx, act, { importId, chunk, assumeInpatient: options.assumeInpatient });
  await setProgress(tx, importId, { done: done + chunk.lineCount, total });
  return { lineCount: chunk.lineCount, idsNeeded: 0, lastKey: chunk.lastKey };
}

/** Applies the lines of a chunk and settles each; gives what became of them. The audit entry says what was done. */
export async function applyChunk(
  tx: Tx,
  act: Act,
  given: { importId: number; chunk: WaitingChunk; assumeInpatient: boolean; action?: "import-lines" | "repair-line" },
): Promise<LineOutcome[]> {
  const { importId, chunk, assumeInpatient, action = "import-lines" } = given;
  const by = recording(act);
  const zone = zoneNamed((await facility(tx, by.facilityId)).zone);
  const settled: LineOutcome[] = [];
  if (chunk.wards.length > 0) {
    await lockFacility(tx, by.facilityId);
    for (const line of chunk.wards)
      settled.push(settledAs(line, await describeWardLine(tx, act, { line, assumeInpatient }), zone));
  }
  for (const line of chunk.otherNames) settled.push(settledAs(line, { state: "marked", marks: ["ward-alias"] }, zone));
  await ensureWards(tx, act, { codes: wardsNamed(chunk), assumeInpatient });
  const { outcomes, patientIds } = await applyPatients(tx, act, { all: chunk.patients, zone });
  await determineAgain(tx, by, { patientIds, cause: action });
  for (const [line, outcome] of outcomes) settled.push(settledAs(line, outcome, zone));
  settled.push(...(await applyCounts(tx, act, chunk)));
  await settleLines(tx, importId, settled);
  await writeAudit(tx, by, { action, patientIds, details: { importId, lines: chunk.lineCount } });
  return settled;
}

async function applyPatients(
  tx: Tx,
  act: Act,
  { all, zone }: { all: readonly PatientGroup[]; zone: Zone },
): Promise<{ outcomes: Map<PatientLine, Outcome>; patientIds: readonly number[] }> {
  const by = recording(act);
  const { groups, outcomes: future } = refuseFutureLines(all, act.now, zone);
  await makePatients(tx, act, groups);
  await lockSurvivors(
    tx,
    by.facilityId,
    groups.flatMap((group) => group.identifier ?? []),
  );
  const wardIds = new Map((await wards(tx, by.facilityId)).map((ward) => [ward.code, ward.id]));
  const planned = await planGroups(tx, by.facilityId, groups, {
    ...{ wardIds, newId: () => tx.newId(), care: await careRules(tx, act) },
  });
  await storePlanned(tx, by, planned);
  return { outcomes: new Map([...future, ...planned.outcomes]), patientIds: planned.survivorIds };
}

/** Takes the rows of the surviving patients, again when a merge came first while this waited. */
async function lockSurvivors(tx: Tx, facilityId: number, identifiers: readonly string[]): Promise<void> {
  const survivors = async () => {
    const patients = await patientsByIdentifier(tx, facilityId, identifiers);
    return [...new Set([...patients.values()].map((patient) => patient.survivorId))];
  };
  for (let ids = await survivors(); ; ) {
    await lockPatients(tx, facilityId, ids);
    const now = await survivors();
    if (now.every((id) => ids.includes(id))) return;
    ids = now;
  }
}

/** Makes the patients that the lines name; completes what is known of a patient from stays.csv. */
async function makePatients(tx: Tx, act: Act, groups: readonly PatientGroup[]): Promise<void> {
  const by = recording(act);
  const named = groups.flatMap(({ identifier, lines }) => {
    const first = lines.find((line) => line.file === "stays.csv");
    const { birth_date: birthDay = null, sex = null } = first?.values ?? {};
    return identifier === null || lines.length === 0 ? [] : [{ identifier, birthDay, sex }];
  });
  const known = await patientsByIdentifier(
    tx,
    by.facilityId,
    named.map((patient) => patient.identifier),
  );
  await ensurePatients(
    tx,
    by,
    named.filter((p) => !known.has(p.identifier)).map((patient) => ({ id: tx.newId(), ...patient })),
  );
  for (const patient of named) {
    const before = known.get(patient.identifier);
    if (before) await completePatient(tx, before.id, patient);
  }
}

async function applyCounts(tx: Tx, act: Act, { counts }: WaitingChunk): Promise<LineOutcome[]> {
  if (counts.length === 0) return [];
  const by = recording(act);
  const zone = zoneNamed((await lockFacility(tx, by.facilityId)).zone);
  const today = zone.dayOf(act.now);
  const wardIds = new Map((await wards(tx, by.facilityId)).map((ward) => [ward.code, ward.id]));
  const settled = counts.map((line) => ({ line, outcome: countOutcome(line, today) }));
  await putDailyCounts(
    tx,
    by,
    settled.flatMap(({ line, outcome }) => {
      const wardId = wardIds.get(line.values.ward);
      if (outcome.state === "refused" || wardId === undefined) return [];
      const { day, patients, catheters } = line.values;
      return [{ wardId, day, patients, catheters }];
    }),
  );
  return settled.map(({ line, outcome }) => settledAs(line, outcome, zone));
}
