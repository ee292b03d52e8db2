import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import { dayMs } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import type { IntakeFile, IntakeLine, IntakeValues, LineOf } from "../domain/intake/intake-line.ts";
import type { ReadLine } from "../usecases/intake/intake-item.ts";
import { type Draw, drawFrom } from "./draw.ts";
import { drawPath, type Leg } from "./patient-path.ts";
import { type DemoWard, demoWards } from "./wards.ts";

export interface DemoOptions {
  readonly seed: number;
  readonly zone: Zone;
  /** The demo reaches up to this instant. */
  readonly now: Instant;
  /** How many days back it reaches. */
  readonly days: number;
}

/**
 * The fictional Alder Bay Hospital as lines of files: wards, then for every patient the stay, its moves and its
 * catheters. The same seed and instant give the same lines. Nobody in it exists.
 */
export async function* alderBayLines(options: DemoOptions): AsyncIterable<ReadLine> {
  const write = lineWriter();
  for (const ward of demoWards) yield write("wards.csv", wardValues(ward));
  // A few weeks more are drawn than are kept, so that the first day finds the wards full.
  const settling = 40;
  const last = options.zone.dayOf(options.now);
  const catheters: ReadLine[] = [];
  const draw = drawFrom(options.seed);
  for (let day = last - options.days - settling; day <= last; day++) {
    for (const person of arrivalsOn(draw, day, options)) {
      if (person.legs[0] === undefined || (person.legs.at(-1)?.to ?? 0) < options.now - options.days * dayMs) continue;
      for (const leg of person.legs) yield write("moves.csv", moveValues(person, leg, options.now));
      for (const values of person.catheters) catheters.push(write("catheters.csv", values));
    }
  }
  yield* catheters;
}

interface Person {
  readonly stay: string;
  readonly patient: string;
  readonly legs: readonly Leg[];
  readonly catheters: readonly IntakeValues["catheters.csv"][];
}

function arrivalsOn(draw: Draw, day: DayNumber, { zone, now }: DemoOptions): Person[] {
  return demoWards.flatMap((ward) =>
    Array.from({ length: draw.count(ward.arrivalsADay) }, (_, i) => {
      const arrival = zone.firstInstantFrom(day * dayMs + draw.whole(6 * 60, 22 * 60) * 60_000);
      const stay = `S${day}-${ward.code}-${i + 1}`;
      const legs = drawPath(draw, ward, arrival).filter((leg) => leg.from <= now);
      return { stay, patient: `AB${day}${ward.code}${i + 1}`, legs, catheters: cathetersOf(draw, { stay, legs, now }) };
    }),
  );
}

function cathetersOf(
  draw: Draw,
  { stay, legs, now }: { stay: string; legs: readonly Leg[]; now: Instant },
): IntakeValues["catheters.csv"][] {
  const catheters: IntakeValues["catheters.csv"][] = [];
  const end = legs.at(-1)?.to ?? 0;
  let free = 0;
  for (const leg of legs) {
    if (leg.from < free || !draw.chance(leg.ward.catheterShare)) continue;
    const inserted = leg.from + draw.whole(10, 240) * 60_000;
    const removed = inserted + Math.round(draw.wait(leg.ward.meanDwellDays) * 1440 + 60) * 60_000;
    if (inserted >= Math.min(leg.to, now)) continue;
    // Some removals are never written down: the commonest cause of wrong catheter-days (common practice).
    const forgotten = draw.chance(0.02);
    const out = forgotten || removed >= end || removed > now ? null : removed;
    free = out ?? end;
    catheters.push({
      stay,
      catheter: null,
      kind: draw.chance(0.03) ? "suprapubic" : "indwelling-urethral",
      inserted,
      removed: out,
      last_seen: Math.min(inserted + Math.round((Math.min(removed, now) - inserted) / 2), now),
      in_place_on_arrival: null,
      indication: null,
      size_fr: draw.chance(0.7) ? 14 : 16,
      balloon_ml: 10,
    });
  }
  return catheters;
}

function wardValues({ code, name, type, setting, beds }: DemoWard): IntakeValues["wards.csv"] {
  return { ward: code, name, type, setting, beds, opened: null, closed: null };
}

function moveValues({ stay, patient }: Person, leg: Leg, now: Instant): IntakeValues["moves.csv"] {
  const { ward, bed, from, to, absence } = leg;
  return { stay, patient, ward: ward.code, bed, from, to: to > now ? null : to, absence: to > now ? null : absence };
}

/** Numbers the lines of each file as if they were written down one below the other. */
function lineWriter(): <F extends IntakeFile>(file: F, values: IntakeValues[F]) => ReadLine {
  const last = new Map<IntakeFile, number>();
  return <F extends IntakeFile>(file: F, values: IntakeValues[F]): ReadLine => {
    const line = (last.get(file) ?? 1) + 1;
    last.set(file, line);
    const raw = Object.values(values).join(",");
    const read: LineOf<F> = { file, line, values, marks: [], raw };
    return { ...(read as unknown as IntakeLine), type: "line", fingerprint: `demo ${file} ${raw}` };
  };
}
