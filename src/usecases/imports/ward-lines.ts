import type { LineOf } from "../../domain/intake/intake-line.ts";
import type { Outcome } from "../../domain/intake/outcome.ts";
import { lockFacility } from "../../store/facilities.ts";
import type { Tx } from "../../store/store.ts";
import { addWard, putWardSetting, type WardRow, wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { describeWardIn } from "../wards/describe-ward.ts";

/**
 * Applies a line of wards.csv: what a ward is from its first day, which is the day it opened, or the beginning. The line
 * of a ward that somebody described by hand changes nothing: files are read again and again, and know nothing of what
 * was said since. The facility's row must be taken.
 */
export async function describeWardLine(
  tx: Tx,
  act: Act,
  { line, assumeInpatient }: { line: LineOf<"wards.csv">; assumeInpatient: boolean },
): Promise<Outcome> {
  const { ward: code, name, type, setting, beds, opened, closed } = line.values;
  const known = (await wards(tx, act.actor.facilityId)).find((ward) => ward.code === code);
  const latest = known?.settings.at(-1);
  const assumed = setting ?? latest?.setting ?? (assumeInpatient ? "inpatient" : null);
  const said = {
    name: name ?? latest?.name ?? code,
    type: type ?? latest?.type ?? null,
    setting: assumed,
    beds: beds ?? latest?.beds ?? null,
    fromDay: latest?.fromDay ?? opened ?? 0,
  };
  const undated = {
    openedDay: opened ?? known?.openedDay ?? null,
    closedDay: closed ?? known?.closedDay ?? null,
  };
  const isGuess = setting === null && assumed !== null && !latest;
  if (!known) {
    const wardId = await addWard(tx, recording(act), { code, ...undated, namedOnly: isGuess });
    await putWardSetting(tx, recording(act), wardId, said);
    return { state: "accepted" };
  }
  if (!known.namedOnly && saysTheSame(known, { ...said, ...undated })) return { state: "unchanged" };
  if (known.settings.some(({ byHand }) => byHand)) return { state: "marked", marks: ["ward-by-hand"] };
  await describeWardIn(tx, act, { ward: known, said, undated: { ...undated, namedOnly: isGuess }, byHand: false });
  return { state: "accepted" };
}

function saysTheSame({ settings, ...ward }: WardRow, line: Record<string, unknown>): boolean {
  const latest = settings.at(-1);
  const present: Record<string, unknown> = { ...ward, ...latest };
  return latest !== undefined && Object.entries(line).every(([field, value]) => present[field] === value);
}

/**
 * Makes the wards that lines name and nobody described, marked as such. Without `assumeInpatient` they have no setting
 * and count nowhere until somebody gives them one.
 */
export async function ensureWards(
  tx: Tx,
  act: Act,
  { codes, assumeInpatient }: { codes: readonly string[]; assumeInpatient: boolean },
): Promise<void> {
  const by = recording(act);
  const known = new Set((await wards(tx, by.facilityId)).map((ward) => ward.code));
  const missing = codes.filter((code) => !known.has(code));
  if (missing.length === 0) return;
  await lockFacility(tx, by.facilityId);
  const sinceThen = new Set((await wards(tx, by.facilityId)).map((ward) => ward.code));
  for (const code of missing.filter((c) => !sinceThen.has(c))) {
    const wardId = await addWard(tx, by, { code, namedOnly: true });
    const setting = assumeInpatient ? "inpatient" : null;
    await putWardSetting(tx, by, wardId, { fromDay: 0, name: code, type: null, setting, beds: null });
  }
}
