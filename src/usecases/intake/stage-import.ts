import { refuse } from "../../../shared/problems.ts";
import type { IntakeLine } from "../../domain/intake/intake-line.ts";
import { latestFingerprints, type StagedLine, stageLines } from "../../store/import-lines.ts";
import { addImport } from "../../store/imports.ts";
import { survivorsOf } from "../../store/patients.ts";
import { ownersOfStays } from "../../store/stays.ts";
import type { Claim, Read } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { entryKey } from "./entry-key.ts";
import { type KnownPatients, LineGroups } from "./group-lines.ts";
import type { ImportOptions, IntakeItem, ReadLine, UnreadLine } from "./intake-item.ts";

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
 * cannot be opened leaves nothing behind.
 */
export async function stageImport(act: Act, items: AsyncIterable<IntakeItem>, options: ImportOptions): Promise<Staged> {
  const groups = new LineGroups();
  let begun: { importId: number; claim: Claim } | undefined;
  let total = 0;
  let waiting = 0;
  let brokenOff = false;
  let batch: IntakeItem[] = [];
  const flush = async () => {
    begun ??= await begin(act, options);
    waiting += await stageBatch(act, { importId: begun.importId, groups, batch });
    total += batch.length;
    batch = [];
    options.onProgress?.({ phase: "reading", done: total, total: null });
    return begun;
  };
  try {
    for await (const item of items) {
      batch.push(item);
      if (item.type === "refused" && item.wholeFile) brokenOff = true;
      if (batch.length >= batchSize) await flush();
    }
    return { ...(await flush()), total, waiting, brokenOff };
  } catch (error) {
    await begun?.claim.release();
    throw error;
  }
}

async function begin(act: Act, options: ImportOptions): Promise<{ importId: number; claim: Claim }> {
  const importId = await act.store.tx((tx) => addImport(tx, recording(act), options));
  const claim = await act.store.claim(importId);
  return claim ? { importId, claim } : refuse("import-interrupted", "Somebody else took this import as it began.");
}

/** Returns how many of the lines wait to be tried; the others are refused or known already. */
async function stageBatch(
  act: Act,
  { importId, groups, batch }: { importId: number; groups: LineGroups; batch: readonly IntakeItem[] },
): Promise<number> {
  const keyed = batch.map((item) =>
    item.type === "line" ? { item, entryKey: entryKey(item) } : { item, entryKey: "" },
  );
  for (const { item } of keyed)
    if (item.type === "refused" && item.file === "stays.csv" && item.stay !== null)
      groups.refuseStay(item.stay, `${item.file} line ${item.line ?? 0}`);
  const { latest, known } = await act.store.read((read) => recorded(read, act, { groups, keyed }));
  const staged = keyed.map(({ item, entryKey: about }) =>
    item.type === "refused" ? refusedLine(item) : stagedLine({ item, entryKey: about, groups, latest, known }),
  );
  await act.store.tx((tx) => stageLines(tx, importId, staged));
  return staged.filter((line) => line.state === "staged").length;
}

type Keyed = { readonly item: IntakeItem; readonly entryKey: string };

/** What is recorded of the things that a batch speaks of. */
async function recorded(
  read: Read,
  act: Act,
  { groups, keyed }: { groups: LineGroups; keyed: readonly Keyed[] },
): Promise<{ latest: ReadonlyMap<string, string>; known: KnownPatients }> {
  const { facilityId } = act.actor;
  const lines = keyed.flatMap(({ item }) => (item.type === "line" ? [item] : []));
  const keys = keyed.flatMap(({ item, entryKey: about }) => (item.type === "line" ? [about] : []));
  const latest = await latestFingerprints(read, facilityId, keys);
  const owners = await ownersOfStays(read, facilityId, groups.unknownStays(lines));
  const named = lines.flatMap((line) => ("patient" in line.values ? [line.values.patient] : []));
  const identifiers = [...named, ...[...owners.values()].map((owner) => owner.identifier)];
  const survivors = await survivorsOf(read, facilityId, [...new Set(identifiers)]);
  return {
    latest,
    known: {
      ownerOf: (stay) => owners.get(stay)?.identifier,
      survivorOf: (identifier) => survivors.get(identifier) ?? identifier,
    },
  };
}

function stagedLine(given: {
  item: ReadLine;
  entryKey: string;
  groups: LineGroups;
  latest: ReadonlyMap<string, string>;
  known: KnownPatients;
}): StagedLine {
  const { item, groups, latest, known } = given;
  const { fingerprint, type: _type, ...line } = item;
  const { key, fault } = groups.place({ line: item, entryKey: given.entryKey, fingerprint }, known);
  const common = { file: line.file, line: line.line, groupKey: key, fingerprint, entryKey: given.entryKey };
  if (fault) return { ...common, state: "refused", content: line.raw, faults: JSON.stringify([fault]) };
  const state = latest.get(given.entryKey) === fingerprint ? "unchanged" : "staged";
  return { ...common, state, content: JSON.stringify(line satisfies IntakeLine), faults: null };
}

/** A fault of the whole file stands at line 0; its faults say where it broke off. */
function refusedLine(item: UnreadLine): StagedLine {
  const line = item.wholeFile ? 0 : (item.line ?? 0);
  return {
    file: item.file,
    line,
    state: "refused",
    groupKey: "",
    fingerprint: "",
    entryKey: "",
    content: item.raw,
    faults: JSON.stringify(item.faults),
  };
}
