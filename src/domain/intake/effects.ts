import type { PatientTimeline } from "../timeline/timeline.ts";
import type { NoteChange } from "./plan.ts";
import type { CultureChanges } from "./plan-cultures.ts";

/** How many entries of a kind lines would make, and how many they would change. */
interface Effect {
  readonly added: number;
  readonly changed: number;
}

/** The kinds of entries that lines make, in the order in which a person thinks of them. */
export const effectKinds = ["wards", "stays", "moves", "catheters", "reviews", "specimens", "signs"] as const;
export type EffectKind = (typeof effectKinds)[number];

/** What storing lines would change in the record. */
export type ImportEffects = Readonly<Record<EffectKind, Effect>>;

const none: Effect = { added: 0, changed: 0 };
/** Nothing would change. */
export const noEffects: ImportEffects = {
  ...{ wards: none, stays: none, moves: none, catheters: none, reviews: none, specimens: none, signs: none },
};

/** The sum of what two sets of lines would change. */
export function addEffects(one: ImportEffects, other: ImportEffects): ImportEffects {
  const sums = effectKinds.map((kind): [EffectKind, Effect] => [
    kind,
    { added: one[kind].added + other[kind].added, changed: one[kind].changed + other[kind].changed },
  ]);
  // Every kind has its sum.
  return Object.fromEntries(sums) as Record<EffectKind, Effect>;
}

/**
 * What changes when timelines become others and reviews are written. An entry is changed when anything that it says
 * itself differs; what it holds counts for itself. Wards are no part of timelines: see {@link withNewWards}.
 */
export function effectsOf(planned: {
  changes: readonly { readonly before: PatientTimeline; readonly after: PatientTimeline }[];
  notes: readonly NoteChange[];
  cultures: CultureChanges;
}): ImportEffects {
  const { changes, notes, cultures } = planned;
  const before = entriesOf(changes.map((change) => change.before));
  const after = entriesOf(changes.map((change) => change.after));
  return {
    wards: none,
    stays: compared(before.stays, after.stays),
    moves: compared(before.moves, after.moves),
    catheters: compared(before.catheters, after.catheters),
    reviews: counted(notes),
    specimens: counted(cultures.specimens),
    signs: counted(cultures.signs),
  };
}

function counted(changes: readonly { readonly old: unknown }[]): Effect {
  const added = changes.filter(({ old }) => old === null).length;
  return { added, changed: changes.length - added };
}

/** The same with the wards that would be made. */
export function withNewWards(effects: ImportEffects, codes: ReadonlySet<string>): ImportEffects {
  return { ...effects, wards: { added: codes.size, changed: 0 } };
}

type Entries = ReadonlyMap<number, string>;

function entriesOf(timelines: readonly PatientTimeline[]): Record<"stays" | "moves" | "catheters", Entries> {
  const stays = timelines.flatMap((timeline) => timeline.stays);
  return {
    stays: new Map(stays.map(({ wardStays: _, catheters: __, ...own }) => [own.id, JSON.stringify(own)])),
    moves: new Map(stays.flatMap((stay) => stay.wardStays.map((one) => [one.id, JSON.stringify(one)] as const))),
    catheters: new Map(stays.flatMap((stay) => stay.catheters.map((one) => [one.id, JSON.stringify(one)] as const))),
  };
}

function compared(before: Entries, after: Entries): Effect {
  const kept = [...after].filter(([id]) => before.has(id));
  return { added: after.size - kept.length, changed: kept.filter(([id, text]) => before.get(id) !== text).length };
}
