import { Problem, refuse } from "../../../shared/problems.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { type LineMark, lineMarks } from "../../domain/intake/outcome.ts";
import { writeAudit } from "../../store/audit.ts";
import { facility } from "../../store/facilities.ts";
import { countLines, type StagedLine, settleLines } from "../../store/import-lines.ts";
import { importOf } from "../../store/imports.ts";
import { forgetMonths, touchLine } from "../../store/line-months.ts";
import { type LinePlace, noteSettled, restageLine, takeSetAside } from "../../store/set-aside-lines.ts";
import type { Tx } from "../../store/store.ts";
import { wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { applyChunk } from "./apply-import.ts";
import { entryKey } from "./entry-key.ts";
import { LineGroups } from "./group-lines.ts";
import type { PlacedFault, ReadLine } from "./intake-item.ts";
import { placeLine } from "./place-lines.ts";
import { nextChunk } from "./read-waiting.ts";
import { recorded, stagedLine } from "./stage-import.ts";
import { questionsAbout, type WardOf, wardNames, withWard } from "./ward-names.ts";

type Repaired = { state: "accepted" | "marked" | "unchanged"; marks: string[] };

/**
 * Stores a line that was set aside as a person mended it. It is checked like any other line, and against what is
 * recorded by now; refused again, nothing changes and each fault stands at its column.
 * Refuses `line-not-set-aside`, and whatever a line can be refused for.
 */
export function repairImportLine(
  act: Act,
  { importId, item }: { importId: number; item: ReadLine },
): Promise<Repaired> {
  const place = { importId, file: item.file, line: item.line };
  return act.store.tx(
    async (tx) => {
      const { text, sourceId } = await take(tx, act, place);
      const wardOf = await wardNames(tx, act.actor.facilityId, { sourceId });
      const named = withWard(item, wardOf);
      await refuseNearWard(tx, act, named);
      const staged = await stagedAnew(tx, act, named);
      if (staged.state === "refused") refuseLine(JSON.parse(staged.faults ?? "[]"));
      await restageLine(tx, place, staged);
      const repaired =
        staged.state === "unchanged" ? await sayUnchanged(tx, act, place) : await store(tx, act, { place, wardOf });
      // What was missing is in the record now; doubtful, it is a matter of the months that it names by now.
      await forgetMonths(tx, place);
      if (repaired.state === "marked") await placeLine(tx, act, place);
      const isKept = repaired.state !== "unchanged";
      await noteSettled(tx, place, { ...recording(act), text: isKept ? text : null });
      return repaired;
    },
    { ids: idsOfOneLine },
  );
}

/** A line makes at most a patient, a stay and one entry in it, or a ward with its setting. */
const idsOfOneLine = 68;

/** Drops a line that was set aside: it stays to be read, with the reason. Refuses `line-not-set-aside`. */
export function dropImportLine(
  act: Act,
  { reason, ...place }: LinePlace & { reason: string },
): Promise<{ importId: number; refused: number }> {
  return act.store.tx(async (tx) => {
    const { text } = await take(tx, act, place);
    await noteSettled(tx, place, { ...recording(act), text, dropped: { reason } });
    await touchLine(tx, place);
    const { importId, file, line } = place;
    await writeAudit(tx, recording(act), { action: "drop-line", details: { importId, file, line } });
    return { importId, refused: (await countLines(tx, importId)).refused ?? 0 };
  });
}

/** Lines are set aside by an import that was stored. */
async function take(tx: Tx, act: Act, place: LinePlace): Promise<{ text: string; sourceId: number | null }> {
  const row = await importOf(tx, act.actor.facilityId, place.importId);
  // A fault of a whole file stands at line 0, and such a file is never stored.
  const text = row?.state === "applied" ? await takeSetAside(tx, place) : null;
  if (text === null) return refuse("line-not-set-aside", "No line of this number waits for repair there.");
  return { text, sourceId: row?.sourceId ?? null };
}

/** A repair of one line asks no question, so a code near that of a ward is never taken for a new ward. */
async function refuseNearWard(tx: Tx, { actor }: Act, item: ReadLine): Promise<void> {
  if (!("ward" in item.values) || item.file === "wards.csv") return;
  const { ward } = item.values;
  const known = await wards(tx, actor.facilityId);
  if (known.some(({ code }) => code === ward)) return;
  const found = { codes: new Set([ward]), described: new Map<string, string>() };
  const near = (await questionsAbout(tx, actor.facilityId, found)).flatMap((question) => question.near);
  if (near.length === 0) return;
  const detail = `No unit has the code ${ward}. Similar: ${near.map(({ code }) => code).join(", ")}.`;
  refuse("ward-unclear", detail, { pointer: "/values/ward" });
}

async function stagedAnew(tx: Tx, act: Act, item: ReadLine): Promise<StagedLine> {
  const groups = new LineGroups();
  const about = entryKey(item);
  const { latest, known } = await recorded(tx, act, { groups, keyed: [{ item, entryKey: about }] });
  const zone = zoneNamed((await facility(tx, act.actor.facilityId)).zone);
  return stagedLine({ item, entryKey: about, groups, latest, known, zone });
}

/** What the line says was stored before. */
async function sayUnchanged(tx: Tx, act: Act, { importId, file, line }: LinePlace): Promise<Repaired> {
  await settleLines(tx, importId, [{ file, line, raw: "", about: null, outcome: { state: "unchanged" } }]);
  await writeAudit(tx, recording(act), { action: "repair-line", details: { importId, lines: 0 } });
  return { state: "unchanged", marks: [] };
}

async function store(
  tx: Tx,
  act: Act,
  { place: { importId }, wardOf }: { place: LinePlace; wardOf: WardOf },
): Promise<Repaired> {
  const chunk = await nextChunk(tx, importId, { after: "", wardOf });
  if (!chunk) throw new Error(`import ${importId} lost the line that was to be repaired`);
  const [settled] = await applyChunk(tx, act, { importId, chunk, assumeInpatient: false, action: "repair-line" });
  if (!settled) throw new Error(`import ${importId} settled nothing of the line that was to be repaired`);
  const { outcome } = settled;
  if (outcome.state === "refused") return refuseLine(outcome.faults);
  const marks = outcome.state === "marked" ? outcome.marks.map((mark: LineMark) => lineMarks[mark]) : [];
  return { state: outcome.state, marks };
}

function refuseLine(faults: readonly PlacedFault[]): never {
  const [first, ...more] = faults.map(({ code, column, detail, other }) => ({
    ...{ code, detail, pointer: column === null ? "" : `/values/${column}` },
    ...(other === undefined ? {} : { other }),
  }));
  if (!first) throw new Error("a line was refused without a fault");
  throw new Problem(first, ...more);
}
