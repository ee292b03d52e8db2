import { type Fault, Problem } from "../../shared/problems.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { instantOfDay, midnightOf, readLocalTime } from "../domain/days/local-time.ts";
import { type Zone, zoneNamed } from "../domain/days/zone.ts";
import type { Mark } from "../domain/timeline/timeline.ts";
import { type Act, futureFaults } from "../usecases/act.ts";
import { zoneOfFacility } from "../usecases/settings/find-facility.ts";

type Timed<I, K extends keyof I> = Omit<I, K> & {
  readonly [N in K]: Exclude<I[N], string> | (I[N] extends undefined ? never : Instant);
} & { readonly marks: readonly Mark[] };

/**
 * An input with its charted times as instants. A time without an offset is the facility's local time; one that occurs
 * twice is the earlier instant and marked. Refuses all faults at once: `time-unreadable`, `time-does-not-exist`,
 * `in-the-future`. `fields`: what the entry calls a time that has another name in the input, for its mark.
 * `orDay`: of these a day alone is taken too, with the mark `no-hour`: a correction may leave the hour not recorded.
 */
export async function withInstants<I extends object, K extends keyof I & string>(
  act: Act,
  input: I,
  names: readonly K[],
  { fields = {}, orDay = [] }: { fields?: Partial<Record<K, string>>; orDay?: readonly K[] } = {},
): Promise<Timed<I, K>> {
  const texts = names.flatMap((name) => (typeof input[name] === "string" ? [[name, input[name]] as const] : []));
  const zone = await zoneFor(
    act,
    texts.map(([, text]) => text),
  );
  const read = texts.map(([name, text]) => readOne(name, text, { zone, orDay: orDay.includes(name) }));
  const instants = Object.fromEntries(read.flatMap(({ name, instant }) => (instant === null ? [] : [[name, instant]])));
  const [first, ...more] = [...read.flatMap(({ faults }) => faults), ...futureFaults(act.now, instants)];
  if (first) throw new Problem(first, ...more);
  const marks = read.flatMap(({ name, mark }): Mark[] => (mark === null ? [] : [`${mark}:${fields[name] ?? name}`]));
  // The cast is safe: every text of these names was replaced by its instant.
  return { ...input, ...instants, marks } as unknown as Timed<I, K>;
}

/** Times that all carry an offset need no zone: then the facility is not asked for it. */
async function zoneFor({ store, actor }: Act, texts: readonly string[]): Promise<Zone> {
  const local = texts.some((text) => !/(Z|[+-]\d\d:\d\d)$/.test(text));
  return zoneNamed(local ? await zoneOfFacility(store, actor) : "UTC");
}

interface ReadTime<K extends string> {
  readonly name: K;
  readonly instant: Instant | null;
  readonly mark: "repeated-hour" | "no-hour" | null;
  readonly faults: readonly Fault[];
}

const dayAlone = /^\d{4}-\d\d-\d\d$/;

function readOne<K extends string>(
  name: K,
  text: string,
  { zone, orDay }: { zone: Zone; orDay: boolean },
): ReadTime<K> {
  try {
    if (orDay && dayAlone.test(text)) {
      const day = midnightOf(`${text}T00:00`, zone);
      const instant = day === null ? null : instantOfDay(day, zone);
      if (instant !== null) return { name, instant, mark: "no-hour", faults: [] };
    }
    const { instant, repeated } = readLocalTime(text, zone);
    return { name, instant, mark: repeated ? "repeated-hour" : null, faults: [] };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const faults = error.faults.map((fault) => ({ ...fault, pointer: `/${name}` }));
    return { name, instant: null, mark: null, faults };
  }
}
