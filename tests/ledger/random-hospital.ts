import { Problem } from "../../shared/problems.ts";
import type { Store } from "../../src/store/store.ts";
import type { Act, Actor } from "../../src/usecases/act.ts";
import { censusInstants, localDay } from "./census-instants.ts";
import { type Chance, chanceOf } from "./chance.ts";
import { type DrawnEdit, drawEdit, drawRule } from "./edit-kinds.ts";
import { openRandomFacility, type RandomFacility, runDays } from "./random-facility.ts";
import type { HospitalRecord, RecordReader } from "./read-record.ts";
import { dayMs, type Edit, minuteMs, type Scene, standingStays } from "./scene.ts";

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

/** What the edits are made in, and who looks at the record in between. */
export interface Workplace {
  /** One for each client, or one for all. */
  readonly stores: readonly Store[];
  readonly reader: RecordReader;
  /** Called after every edit and every burst. */
  readonly look: (run: RandomRun) => void;
}

/** Edits made one after another, and clients that act at once about one patient; that happens once or twice. */
const singles = 32;
const clients = 8;
const quarterMs = 15 * minuteMs;
const paceQuarters = Math.round((runDays * dayMs) / singles / quarterMs);

/**
 * A new facility in the database, with at least 40 random edits through the use cases, which are the same for the
 * same seed. What is refused is counted; every other error is thrown.
 */
export async function randomHospital({ stores, reader, look }: Workplace, seed: number): Promise<RandomRun> {
  const facility = await openRandomFacility(storeOf(stores, 0), seed);
  const chance = chanceOf(seed);
  const bursts = [14 + chance.below(18), chance.percent(40) ? 14 + chance.below(18) : -1];
  const outcomes: Outcome[] = [];
  let now = facility.start;
  let drawn = 0;
  const asItIs = async () => {
    const run = { ...facility, record: await reader.read(facility.actor.facilityId), now, outcomes };
    look(run);
    return run;
  };
  for (let step = 0; step < singles; step++) {
    now += chance.below(2 * paceQuarters) * quarterMs;
    for (const isBurst of [...bursts.filter((at) => at === step).map(() => true), false]) {
      const { record } = await asItIs();
      const scene = (focus: number | null) =>
        sceneOf(facility, { record, now, chance: chanceOf(seed * 1000 + drawn), focus, number: drawn++ });
      const edits = isBurst ? drawBurst(busiestPatient(record), scene, chance) : [drawEdit(scene(null))];
      outcomes.push(...(await makeEdits(edits, { stores, actor: facility.actor, now, seed })));
    }
  }
  return asItIs();
}

/** An edit for each client, and in every second burst a change of a counting rule in their midst. */
function drawBurst(focus: number | null, scene: (focus: number | null) => Scene, chance: Chance): DrawnEdit[] {
  const edits = Array.from({ length: clients }, () => drawEdit(scene(focus)));
  if (chance.percent(50)) edits.splice(chance.below(clients), 0, drawRule(scene(null)));
  return edits;
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

async function makeEdits(
  edits: readonly DrawnEdit[],
  { stores, actor, now, seed }: { stores: readonly Store[]; actor: Actor; now: number; seed: number },
): Promise<Outcome[]> {
  const results = await Promise.allSettled(
    edits.map((edit, i) => resultOf(edit, { store: storeOf(stores, i), actor, now })),
  );
  return results.map((result, i) => {
    const { kind, said } = edits[i] ?? { kind: "", said: "" };
    if (result.status === "rejected")
      throw new Error(`SEED=${seed} RUNS=1 failed at: ${said}`, { cause: result.reason });
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
