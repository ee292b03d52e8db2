import type { IntakeLine } from "../../domain/intake/intake-line.ts";
import { type StagedLine, seenFingerprints, stageLines } from "../../store/import-lines.ts";
import { addImport } from "../../store/imports.ts";
import { ownersOfStays } from "../../store/stays.ts";
import { type Act, recording } from "../act.ts";
import { groupsOf } from "./group-lines.ts";
import type { ImportOptions, IntakeItem, ReadLine, UnreadLine } from "./intake-item.ts";

const batchSize = 2000;

export interface Staged {
  readonly importId: number;
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
  const groups = groupsOf();
  let importId: number | undefined;
  let done = 0;
  let waiting = 0;
  let brokenOff = false;
  let batch: IntakeItem[] = [];
  const flush = async () => {
    const id = importId ?? (await act.store.tx((tx) => addImport(tx, recording(act), options)));
    waiting += await stageBatch(act, { importId: id, groups, batch });
    done += batch.length;
    batch = [];
    options.onProgress?.({ phase: "reading", done, total: null });
    return id;
  };
  for await (const item of items) {
    batch.push(item);
    if (item.type === "refused" && item.wholeFile) brokenOff = true;
    if (batch.length >= batchSize) importId = await flush();
  }
  return { importId: await flush(), waiting, brokenOff };
}

/** Returns how many of the lines wait to be tried; the others are refused or known already. */
async function stageBatch(
  act: Act,
  { importId, groups, batch }: { importId: number; groups: ReturnType<typeof groupsOf>; batch: readonly IntakeItem[] },
): Promise<number> {
  const { facilityId } = act.actor;
  const lines = batch.filter((item): item is ReadLine => item.type === "line");
  const { seen, owners } = await act.store.read(async (read) => ({
    seen: await seenFingerprints(
      read,
      facilityId,
      lines.map((line) => line.fingerprint),
    ),
    owners: await ownersOfStays(read, facilityId, groups.unknownStays(lines)),
  }));
  const staged = batch.map((item): StagedLine => {
    if (item.type === "refused") return refusedLine(item);
    const { key, fault } = groups.keyOf(item, (stay) => owners.get(stay)?.identifier);
    const { fingerprint, type: _type, ...line } = item;
    const common = { file: line.file, line: line.line, groupKey: key, fingerprint };
    if (fault) return { ...common, state: "refused", content: line.raw, faults: JSON.stringify([fault]) };
    const state = seen.has(fingerprint) ? "unchanged" : "staged";
    return { ...common, state, content: JSON.stringify(line satisfies IntakeLine), faults: null };
  });
  await act.store.tx((tx) => stageLines(tx, importId, staged));
  return staged.filter((line) => line.state === "staged").length;
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
    content: item.raw,
    faults: JSON.stringify(item.faults),
  };
}
