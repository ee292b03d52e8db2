import { refuse } from "../../../shared/problems.ts";
import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import type { IntakeLine } from "../../domain/intake/intake-line.ts";
import { type Days, daysNamed, type LineAbout, lineAbout } from "../../domain/intake/line-about.ts";
import { facility } from "../../store/facilities.ts";
import { latestFingerprints, type StagedLine, stageLines } from "../../store/import-lines.ts";
import { addImport, importOf, noteImport, setProgress } from "../../store/imports.ts";
import { survivorsOf } from "../../store/patients.ts";
import { ownersOfStays, staysOfCatheters } from "../../store/stays.ts";
import type { Claim, Read } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { entryKey } from "./entry-key.ts";
import { type KnownPatients, LineGroups } from "./group-lines.ts";
import type { ImportOptions, IntakeItem, ReadLine, UnreadLine } from "./intake-item.ts";
import { blankRow, refusedLine } from "./rows-not-read.ts";
import { sourceForImport } from "./source-of-import.ts";
import { wardNames, withWard } from "./ward-names.ts";

const batchSize = 2000;

export interface Staged {
  readonly importId: number;
  /** Nobody else ends the import while this is held. */
  readonly claim: Claim;
  /** How many lines were read. */
  readonly total: number;
  /** How many lines wait to be tried. */
  readonly waiting: number;
  /** A file broke off, so nothing of the folder can be stored. */
  readonly brokenOff: boolean;
}

/**
 * Puts everything that a door reads down to wait, a batch at a time: memory does not grow with the files. A door that
 * cannot be opened leaves nothing behind. `known` is an import that was begun before, with its claim; else one is made.
 */
export async function stageImport(
  act: Act,
  items: AsyncIterable<IntakeItem>,
  options: ImportOptions,
  known?: { importId: number; claim: Claim },
): Promise<Staged> {
  const groups = new LineGroups();
  const zone = zoneNamed((await act.store.read((read) => facility(read, act.actor.facilityId))).zone);
  let days: Days | null = null;
  let begun = known;
  let total = 0;
  let waiting = 0;
  let brokenOff = false;
  let batch: IntakeItem[] = [];
  const flush = async () => {
    begun ??= await begin(act, options);
    const staged = await stageBatch(act, { importId: begun.importId, groups, batch, done: total, zone });
    waiting += staged.waiting;
    days = daysNamed([...staged.named, ...(days ? [days] : [])]);
    total += batch.length;
    batch = [];
    options.onProgress?.({ phase: "reading", done: total, total: null });
    return begun;
  };
  try {
    for await (const item of items) {
      // The lines of a specimen, which stand together, are told of together.
      if (batch.length >= batchSize && !goesOn(batch.at(-1), item)) await flush();
      batch.push(item);
      if (item.type === "refused" && item.wholeFile) brokenOff = true;
    }
    const ended = { ...(await flush()), total, waiting, brokenOff };
    await noteDays(act, ended.importId, days);
    return ended;
  } catch (error) {
    if (!known) await begun?.claim.release();
    throw error;
  }
}

/** Whether a line may be about the specimen of the line before it. */
function goesOn(before: IntakeItem | undefined, item: IntakeItem): boolean {
  const stay = stayOf(item);
  return stay !== null && stay === stayOf(before);
}

function stayOf(item: IntakeItem | undefined): string | null {
  if (item?.file !== "specimens.csv") return null;
  if (item.type === "refused") return item.stay;
  return item.type === "line" && "stay" in item.values ? item.values.stay : null;
}

async function begin(act: Act, options: ImportOptions): Promise<{ importId: number; claim: Claim }> {
  const importId = await act.store.tx(async (tx) => {
    const sourceId = await sourceForImport(tx, act, options.sourceId);
    return addImport(tx, recording(act), { ...options, sourceId });
  });
  const claim = await act.store.claim(importId);
  return claim ? { importId, claim } : refuse("import-interrupted", "Somebody else took this import as it began.");
}

/** By these days a month finds an import that is not stored, and a line of it that names no day. */
async function noteDays({ store }: Act, importId: number, days: Days | null): Promise<void> {
  if (days === null) return;
  await store.tx((tx) => noteImport(tx, importId, { firstDay: days.first, lastDay: days.last }));
}

/** Returns how many of the lines wait to be tried, the others being refused or known already, and what lines name. */
async function stageBatch(
  act: Act,
  given: { importId: number; groups: LineGroups; batch: readonly IntakeItem[]; done: number; zone: Zone },
): Promise<{ waiting: number; named: readonly LineAbout[] }> {
  const { importId, groups, done, zone } = given;
  const batch = await act.store.read((read) => inOwnWards(read, act, { importId, batch: given.batch }));
  const keyed = batch.map((item) =>
    item.type === "line" ? { item, entryKey: entryKey(item) } : { item, entryKey: "" },
  );
  for (const item of batch) if (item.type === "refused") refuseWith(groups, item);
  const { latest, known } = await act.store.read((read) => recorded(read, act, { groups, keyed }));
  const staged = keyed.map(({ item, entryKey: about }) => {
    if (item.type === "refused") return refusedLine(item);
    return item.type === "blank" ? blankRow(item) : stagedLine({ item, entryKey: about, groups, latest, known, zone });
  });
  await act.store.tx(async (tx) => {
    await stageLines(tx, importId, staged);
    await setProgress(tx, importId, { done: done + batch.length, total: null });
  });
  const aboutOf = (item: IntakeItem) => {
    if (item.type === "line") return lineAbout(item.file, item.values, zone);
    return item.type === "refused" ? (item.about ?? []) : [];
  };
  return { waiting: staged.filter((line) => line.state === "staged").length, named: batch.flatMap(aboutOf) };
}

/** The lines with the codes that the wards have which they mean. */
async function inOwnWards(
  read: Read,
  { actor }: Act,
  { importId, batch }: { importId: number; batch: readonly IntakeItem[] },
): Promise<IntakeItem[]> {
  const sourceId = (await importOf(read, actor.facilityId, importId))?.sourceId ?? null;
  const wardOf = await wardNames(read, actor.facilityId, { sourceId });
  return batch.map((item) => (item.type === "line" ? withWard(item, wardOf) : item));
}

/** What is said of a stay whose own line was refused has no ground; a specimen has all of its lines or none. */
function refuseWith(groups: LineGroups, { file, line, stay, specimen }: UnreadLine): void {
  const place = `${file} line ${line ?? 0}`;
  if (file === "stays.csv" && stay !== null) groups.refuseStay(stay, place);
  if (specimen !== undefined) groups.refuseSpecimen(specimen, place);
}

export type Keyed = { readonly item: IntakeItem; readonly entryKey: string };

/** What is recorded of the things that a batch speaks of. */
export async function recorded(
  read: Read,
  act: Act,
  { groups, keyed }: { groups: LineGroups; keyed: readonly Keyed[] },
): Promise<{ latest: ReadonlyMap<string, string>; known: KnownPatients }> {
  const { facilityId } = act.actor;
  const lines = keyed.flatMap(({ item }) => (item.type === "line" ? [item] : []));
  const keys = keyed.flatMap(({ item, entryKey: about }) => (item.type === "line" ? [about] : []));
  const latest = await latestFingerprints(read, facilityId, keys);
  const reviewed = lines.flatMap((line) =>
    line.file === "reviews.csv" && line.values.stay === null ? (line.values.catheter ?? []) : [],
  );
  const stays = await staysOfCatheters(read, facilityId, [...new Set(reviewed)]);
  const unknown = groups.unknownStays(
    lines,
    [...stays.values()].flatMap((found) => found.map(({ stay }) => stay)),
  );
  const owners = await ownersOfStays(read, facilityId, unknown);
  const named = lines.flatMap((line) => ("patient" in line.values ? [line.values.patient] : []));
  const identifiers = [...named, ...[...owners.values()].map((owner) => owner.identifier)];
  const survivors = await survivorsOf(read, facilityId, [...new Set(identifiers)]);
  return {
    latest,
    known: {
      ownerOf: (stay) => owners.get(stay)?.identifier,
      staysOf: (catheter) => (stays.get(catheter) ?? []).map(({ stay }) => stay),
      survivorOf: (identifier) => survivors.get(identifier) ?? identifier,
    },
  };
}

/** A line as it waits, or refused because of what else is said or recorded. */
export function stagedLine(given: {
  item: ReadLine;
  entryKey: string;
  groups: LineGroups;
  latest: ReadonlyMap<string, string>;
  known: KnownPatients;
  zone: Zone;
}): StagedLine {
  const { groups, latest, known, zone } = given;
  const { fingerprint, type: _type, ...read } = given.item;
  const { key, fault, line } = groups.place({ line: read, entryKey: given.entryKey, fingerprint }, known);
  const common = { file: line.file, line: line.line, groupKey: key, fingerprint, entryKey: given.entryKey };
  const about = lineAbout(line.file, line.values, zone);
  if (fault) return { ...common, state: "refused", content: line.raw, faults: JSON.stringify([fault]), about };
  const state = latest.get(given.entryKey) === fingerprint ? "unchanged" : "staged";
  return { ...common, state, content: JSON.stringify(line satisfies IntakeLine), faults: null, about: null };
}
