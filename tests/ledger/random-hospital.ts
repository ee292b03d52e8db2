import { Problem } from "../../shared/problems.ts";
import type { Store } from "../../src/store/store.ts";
import type { Act, Actor } from "../../src/usecases/act.ts";
import * as catheters from "./catheter-edits.ts";
import { censusInstants, localDay } from "./census-instants.ts";
import { type Chance, chanceOf } from "./chance.ts";
import * as corrections from "./correction-edits.ts";
import * as facilities from "./facility-edits.ts";
import { openRandomFacility, type RandomFacility, runDays } from "./random-facility.ts";
import type { HospitalRecord, RecordReader } from "./read-record.ts";
import { type Draw, dayMs, type Edit, minuteMs, type Scene, standingStays } from "./scene.ts";
import * as stays from "./stay-edits.ts";

/** How often each kind of edit is drawn, against the others. */
export const kinds: readonly { readonly name: string; readonly weight: number; readonly draw: Draw }[] = [
  { name: "admission", weight: 14, draw: stays.drawAdmission },
  { name: "move", weight: 10, draw: stays.drawMove },
  { name: "absence", weight: 9, draw: stays.drawAbsence },
  { name: "discharge", weight: 6, draw: stays.drawDischarge },
  { name: "discharge cancelled", weight: 3, draw: stays.drawDischargeCancelled },
  { name: "move cancelled", weight: 3, draw: stays.drawMoveCancelled },
  { name: "insertion", weight: 9, draw: catheters.drawInsertion },
  { name: "found in place", weight: 3, draw: catheters.drawFoundInPlace },
  { name: "exchange", weight: 5, draw: catheters.drawExchange },
  { name: "removal", weight: 4, draw: catheters.drawRemoval },
  { name: "removal between", weight: 3, draw: catheters.drawRemovalBetween },
  { name: "confirmation", weight: 2, draw: catheters.drawConfirmation },
  { name: "stay corrected", weight: 5, draw: corrections.drawStayCorrected },
  { name: "ward stay corrected", weight: 7, draw: corrections.drawWardStayCorrected },
  { name: "catheter corrected", weight: 6, draw: corrections.drawCatheterCorrected },
  { name: "stay voided", weight: 1, draw: stays.drawStayVoided },
  { name: "ward stay voided", weight: 2, draw: stays.drawWardStayVoided },
  { name: "catheter voided", weight: 2, draw: catheters.drawCatheterVoided },
  { name: "merge", weight: 5, draw: facilities.drawMerge },
  { name: "unmerge", weight: 4, draw: facilities.drawUnmerge },
  { name: "ward setting", weight: 3, draw: facilities.drawWardSetting },
  { name: "census", weight: 1, draw: facilities.drawCensus },
];

/** What came of one edit: `done`, or the code with which it was refused. */
export interface Outcome {
  readonly kind: string;
  readonly said: string;
  readonly result: string;
  readonly concurrent: boolean;
}

/** A facility after its random edits. */
export interface RandomRun {
  readonly actor: Actor;
  readonly record: HospitalRecord;
  readonly start: number;
  readonly now: number;
  readonly outcomes: readonly Outcome[];
}

/** Edits made one after another, and edits launched at once by as many clients; one burst, or two. */
const singles = 32;
const clients = 8;
const quarterMs = 15 * minuteMs;
const paceQuarters = Math.round((runDays * dayMs) / singles / quarterMs);

/**
 * A new facility in the database, with at least 40 random edits through the use cases, which are the same for the
 * same seed. What is refused is counted; every other error is thrown.
 */
export async function randomHospital(
  { stores, reader }: { stores: readonly Store[]; reader: RecordReader },
  seed: number,
): Promise<RandomRun> {
  const facility = await openRandomFacility(storeOf(stores, 0), seed);
  const chance = chanceOf(seed);
  const bursts = [14 + chance.below(18), chance.percent(40) ? 14 + chance.below(18) : -1];
  const outcomes: Outcome[] = [];
  let now = facility.start;
  let drawn = 0;
  for (let step = 0; step < singles; step++) {
    now += chance.below(2 * paceQuarters) * quarterMs;
    for (const burst of [...bursts.filter((at) => at === step).map(() => clients), 1]) {
      const record = await reader.read(facility.actor.facilityId);
      const focus = burst === 1 ? null : busiestPatient(record);
      const edits = Array.from({ length: burst }, () => {
        const own = chanceOf(seed * 1000 + drawn);
        return drawEdit(sceneOf(facility, { record, now, chance: own, focus, number: drawn++ }));
      });
      outcomes.push(...(await makeEdits(edits, { stores, actor: facility.actor, now })));
    }
  }
  return { ...facility, record: await reader.read(facility.actor.facilityId), now, outcomes };
}

function sceneOf(
  { start, hardInstants }: RandomFacility,
  drawn: { record: HospitalRecord; now: number; chance: Chance; focus: number | null; number: number },
): Scene {
  const { record, now } = drawn;
  const censuses = censusInstants(record, localDay(record.zone, start), localDay(record.zone, now));
  return { ...drawn, start, hardInstants: [...hardInstants, ...censuses.map(({ at }) => at)] };
}

/** The surviving patient with most stays. */
function busiestPatient(record: HospitalRecord): number | null {
  const survivors = [...new Set(record.patients.map((p) => p.survivorId))];
  const stayCount = (focus: number) => standingStays({ record, focus } as Scene).length;
  return survivors.sort((a, b) => stayCount(b) - stayCount(a))[0] ?? null;
}

function drawEdit(scene: Scene): Edit & { kind: string } {
  const { chance } = scene;
  const urn = kinds.flatMap((kind) => Array.from({ length: kind.weight }, () => kind));
  for (let attempt = 0; attempt < 8; attempt++) {
    // Somebody has to be there first.
    const { name, draw } = scene.number < 2 ? (kinds[0] as (typeof kinds)[number]) : chance.pick(urn);
    const edit = draw(scene);
    if (edit) return { ...edit, kind: name };
  }
  const edit = facilities.drawWardSetting(scene);
  if (!edit) throw new Error("the facility has no wards");
  return { ...edit, kind: "ward setting" };
}

async function makeEdits(
  edits: readonly (Edit & { kind: string })[],
  { stores, actor, now }: { stores: readonly Store[]; actor: Actor; now: number },
): Promise<Outcome[]> {
  const results = await Promise.allSettled(
    edits.map((edit, i) => resultOf(edit, { store: storeOf(stores, i), actor, now })),
  );
  return results.map((result, i) => {
    const { kind, said } = edits[i] ?? { kind: "", said: "" };
    if (result.status === "rejected") throw new Error(`failed: ${said}`, { cause: result.reason });
    return { kind, said, result: result.value, concurrent: edits.length > 1 };
  });
}

async function resultOf(edit: Edit, act: Act): Promise<string> {
  try {
    await edit.run(act);
    return "done";
  } catch (error) {
    // That the database gave up is no answer to a person's edit.
    if (error instanceof Problem && !/^(database|disk)/.test(error.code)) return error.code;
    throw error;
  }
}

function storeOf(stores: readonly Store[], client: number): Store {
  const store = stores[client % stores.length];
  if (!store) throw new Error("there is no store");
  return store;
}
