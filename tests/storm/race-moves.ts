import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import type { Chance } from "../ledger/chance.ts";
import type { Answer, Doors } from "./doors.ts";

/** What one client does. */
export interface Move {
  /** For the story of a race that went wrong. */
  readonly said: string;
  /** The action of its audit entry, when it is done. */
  readonly action: string;
  /** The entry whose version it counts on, with the size that it sets, when it corrects the catheter. */
  readonly sizeFr?: number;
  run(): Promise<Answer<Pick<Endpoint, "output">>>;
}

/** A patient who is raced about, and another record of the same person. */
export interface Racers {
  readonly patientId: number;
  readonly otherId: number;
  readonly stayId: number;
  readonly catheterId: number;
  draw(chance: Chance, client: number): Move;
}

/** Admits two records of one person, one of them with a catheter, in a week of their own. */
export async function startRace(doors: Doors, seed: number): Promise<Racers> {
  const { wards } = doors.hospital;
  const done = async <E extends Endpoint>(endpoint: E, input: InputOf<E>, key: string): Promise<OutputOf<E>> => {
    const answer = await doors.ask(endpoint, input, { client: 0, key: `${seed}-${key}` });
    if (answer.refused !== null) throw new Error(`the race could not begin: ${answer.refused}`);
    return answer.done;
  };
  const admit = (name: string, admittedAt: string) =>
    done(
      endpoints.admitPatient,
      { wardId: wards["3E"], identifier: `${name}-${seed}`, number: `${name}-${seed}`, admittedAt },
      name,
    );
  const one = await admit("R", "2026-11-10T08:00");
  const other = await admit("O", "2026-11-02T08:00");
  const end = { stayId: other.stayId, dischargedAt: "2026-11-04T08:00", seenVersion: 1 };
  await done(endpoints.dischargePatient, end, "end");
  const found = { stayId: one.stayId, kind: "indwelling-urethral", foundAt: "2026-11-10T09:00" } as const;
  const { catheterId } = await done(endpoints.recordCatheterOnArrival, found, "catheter");
  const { patientId, stayId } = one;
  const about: About = { doors, seed, catheterId, stayId, patientId, otherId: other.patientId };
  return { ...about, draw: (chance, client) => drawMove(about, chance, client) };
}

interface About {
  readonly doors: Doors;
  readonly seed: number;
  readonly patientId: number;
  readonly otherId: number;
  readonly stayId: number;
  readonly catheterId: number;
}

const reason = "Raced";
const seenVersion = 1;

function drawMove(about: About, chance: Chance, client: number): Move {
  const day = 11 + chance.below(8);
  const at = `2026-11-${day}T${String(8 + chance.below(10)).padStart(2, "0")}:00`;
  const by = { client, key: `${about.seed}-${client}` };
  const { wards } = about.doors.hospital;
  const drawn = { at, by, toWardId: chance.pick([wards["3E"], wards["4N"]]), sizeFr: 12 + client };
  return chance.pick([moveOfStay, moveOfCatheter])(about, drawn, chance);
}

interface Drawn {
  readonly at: string;
  readonly by: { readonly client: number; readonly key: string };
  readonly toWardId: number;
  readonly sizeFr: number;
}

function moveOfStay({ doors, stayId, patientId, otherId }: About, { at, by, toWardId }: Drawn, chance: Chance): Move {
  return chance.pick<Move>([
    {
      ...named("move", "move-patient", at),
      run: () => doors.ask(endpoints.movePatient, { stayId, movedAt: at, toWardId }, by),
    },
    {
      ...named("discharge", "discharge-patient", at),
      run: () => doors.ask(endpoints.dischargePatient, { stayId, dischargedAt: at, seenVersion }, by),
    },
    {
      ...named("merge", "merge-patients", String(otherId)),
      run: () => doors.ask(endpoints.mergePatients, { patientId, fromId: otherId }, by),
    },
  ]);
}

function moveOfCatheter({ doors, stayId, catheterId }: About, { at, by, sizeFr }: Drawn, chance: Chance): Move {
  const insertion = { stayId, kind: "suprapubic", insertedAt: at } as const;
  const correction = { catheterId, sizeFr, confirm: ["/sizeFr"], reason, seenVersion };
  return chance.pick<Move>([
    {
      ...named("insert", "record-insertion", at),
      run: () => doors.ask(endpoints.insertCatheter, insertion, by),
    },
    {
      ...named("remove", "remove-catheter", at),
      run: () => doors.ask(endpoints.removeCatheter, { catheterId, removedAt: at, seenVersion }, by),
    },
    {
      ...named("correct", "correct-catheter", String(sizeFr)),
      sizeFr,
      run: () => doors.ask(endpoints.correctCatheter, correction, by),
    },
    {
      ...named("review", "write-note", at),
      run: () => doors.ask(endpoints.reviewCatheter, { catheterId, at, outcome: "remove" }, by),
    },
  ]);
}

function named(what: string, action: string, detail: string): Pick<Move, "said" | "action"> {
  return { said: `${what} ${detail}`, action };
}
