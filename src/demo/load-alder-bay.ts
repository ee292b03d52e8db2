import { dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Act } from "../usecases/act.ts";
import { importLines } from "../usecases/imports/import-lines.ts";
import type { ImportOptions, ReadLine } from "../usecases/imports/intake-item.ts";
import { findNumbered } from "../usecases/record/find-numbered.ts";
import { addPerson } from "../usecases/settings/add-person.ts";
import { setPolicy } from "../usecases/settings/set-policy.ts";
import { listWards } from "../usecases/wards/list-wards.ts";
import { hospitalLines, isImported, reviewLines } from "./alder-bay.ts";
import { setDemoComparison } from "./comparison.ts";
import { sceneCultures } from "./culture-scenes.ts";
import { drawFrom } from "./draw.ts";
import { drawCultures } from "./draw-cultures.ts";
import { type DemoHospital, type DemoOptions, drawHospital } from "./hospital.ts";
import { careRounds } from "./recent-care.ts";
import { recordCultures } from "./record-cultures.ts";
import { type Recorder, recordCare, recordCorrections, recordInsertions, recordRemovals } from "./record-recent.ts";
import { confirmNoneFound, watchWards } from "./watched-wards.ts";

/** How many days back everything is recorded as people record it: insertions with their records, care, removals. */
const recordedDays = 14;

/**
 * Loads the fictional hospital: what is older comes as files do, the last two weeks as people record them, each entry
 * with the time at which it was written down. Throws a plain Error when the demo contradicts itself.
 */
export async function loadAlderBay(
  act: Act,
  options: Omit<DemoOptions, "now">,
  onProgress: NonNullable<ImportOptions["onProgress"]>,
): Promise<void> {
  const { zone, seed } = options;
  const hospital = drawHospital({ ...options, now: act.now });
  const firstDay = zone.dayOf(act.now) - recordedDays + 1;
  const recordedFrom = zone.firstInstantFrom(firstDay * dayMs);
  await importAll(act, hospitalLines(hospital, { now: act.now, recordedFrom }), onProgress);
  const recorder = await recorderOf(act, hospital);
  await setPolicies(act, recorder, hospital, zone.firstInstantFrom.bind(zone));
  await setDemoComparison(act);
  const draw = drawFrom(seed + 1);
  await recordInsertions(recorder, draw, hospital, recordedFrom);
  const late = hospital.courses.flatMap(({ catheters }) => catheters.filter((one) => !isImported(one, recordedFrom)));
  await importAll(act, reviewLines(late));
  await recordCare(recorder, careRounds(draw, hospital.courses, { zone, now: act.now, firstDay }));
  await recordRemovals(recorder, hospital, recordedFrom);
  await recordCorrections(recorder, hospital);
  await watchWards(act, recorder, options);
  const cultures = [
    ...sceneCultures({ ...options, now: act.now }),
    ...drawCultures(drawFrom(seed + 2), hospital, zone),
  ];
  await recordCultures(recorder, cultures, { zone, now: act.now });
  await confirmNoneFound(act, recorder, options);
}

async function importAll(act: Act, lines: Iterable<ReadLine>, onProgress?: ImportOptions["onProgress"]): Promise<void> {
  const options = { dryRun: false, setAside: false, assumeInpatient: false, ...(onProgress ? { onProgress } : {}) };
  const { refused, importId } = await importLines(act, inTurn(lines), options);
  if (refused > 0) throw new Error(`the demo contradicts itself in ${refused} lines of import ${importId}`);
}

async function* inTurn(lines: Iterable<ReadLine>): AsyncIterable<ReadLine> {
  yield* lines;
}

/** Adds the people of the demo, and knows by whom, when and under which number things are recorded. */
async function recorderOf(act: Act, { courses }: DemoHospital): Promise<Recorder> {
  const nurse = { name: "Sam Ortega", roles: ["bedside"] as const, wards: ["3E", "ICU"] };
  const { personId } = await addPerson(act, nurse);
  await addPerson(act, { name: "Kit Lindqvist", roles: ["manager"], wards: ["3E", "3W", "4N"] });
  const { wards } = await listWards(act, {});
  const wardIds = new Map(wards.map(({ code, wardId }) => [code, wardId]));
  const sam = {
    ...act.actor,
    personId,
    roles: nurse.roles,
    wardIds: nurse.wards.flatMap((code) => wardIds.get(code) ?? []),
  };
  const numbers = {
    stays: courses.map(({ stay }) => stay),
    catheters: courses.flatMap(({ catheters }) => catheters.map(({ number }) => number)),
  };
  const { stayIds, patientIds, catheterIds } = await findNumbered(act, numbers);
  return {
    ...{ wardIds, stayIds, patientIds, catheterIds: new Map(catheterIds) },
    act: (ward, at) => ({
      ...act,
      actor: ward !== undefined && nurse.wards.includes(ward) ? sam : act.actor,
      now: Math.min(at, act.now),
    }),
  };
}

async function setPolicies(
  act: Act,
  { wardIds }: Recorder,
  { policies }: DemoHospital,
  instantOf: (local: number) => Instant,
): Promise<void> {
  for (const { ward, fromDay, body, reason } of policies) {
    // Set the afternoon before it begins.
    const now = instantOf((fromDay - 1) * dayMs + (dayMs * 2) / 3);
    await setPolicy({ ...act, now }, { wardId: wardIds.get(ward) ?? null, fromDay, body, replaces: 0, reason });
  }
}
