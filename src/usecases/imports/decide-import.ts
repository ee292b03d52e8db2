import type { ImportState } from "../../../shared/import-words.ts";
import { refuse } from "../../../shared/problems.ts";
import type { WardQuestion } from "../../domain/intake/ward-codes.ts";
import { writeAudit } from "../../store/audit.ts";
import { countLines } from "../../store/import-lines.ts";
import { importOf, noteImport, setImportState } from "../../store/imports.ts";
import { hasBrokenFile } from "../../store/set-aside-lines.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { endImportIn } from "./import-lines.ts";
import type { WardAnswer } from "./intake-item.ts";
import { keepAnswers, wardCodesOf } from "./ward-names.ts";

export interface ImportDecision {
  readonly importId: number;
  readonly decision: "apply" | "discard";
  /** Refused lines are kept for repair and the others stored; else a refused line stops all. */
  readonly setAside: boolean;
  /** What the person answers about codes of wards that are not known. */
  readonly wards?: readonly WardAnswer[] | undefined;
}

/**
 * Decides what becomes of files that were read and tried. What is to be stored is stored after the answer.
 * Refuses `import-not-waiting`, `import-lines-refused`, `import-file-broken`, `ward-unclear` while a question about a
 * ward is open, and answers that contradict the record.
 */
export function decideImport(
  act: Act,
  { importId, decision, setAside, wards = [] }: ImportDecision,
): Promise<{ importId: number; state: ImportState }> {
  return act.store.tx(async (tx) => {
    const row = await importOf(tx, act.actor.facilityId, importId);
    if (row?.state !== "checked") refuse("import-not-waiting", "It does not wait for a decision now.");
    if (decision === "discard") {
      await endImportIn(tx, act, importId, "discarded");
      return { importId, state: "discarded" };
    }
    await refuseFaulty(tx, importId, setAside);
    const { questions, described } = wardCodesOf(row.wardCodes);
    refuseOpen(questions, wards);
    const { sourceId } = row;
    if (sourceId !== null) await keepAnswers(tx, act, { sourceId, answers: wards, described });
    await setImportState(tx, importId, "applying");
    await noteImport(tx, importId, { setAside });
    await writeAudit(tx, recording(act), { action: "decide-import", details: { importId, setAside } });
    return { importId, state: "applying" };
  });
}

/** Each question needs an answer, and an answer its question. */
function refuseOpen(questions: readonly WardQuestion[], answers: readonly WardAnswer[]): void {
  const open = questions.filter(({ code }) => !answers.some((answer) => answer.code === code));
  const names = open.map(({ code, near }) => `${code} (similar: ${near.map((ward) => ward.code).join(", ")})`);
  if (open.length > 0) refuse("ward-unclear", `Not answered: ${names.join("; ")}.`, { pointer: "/wards" });
  const strange = answers.find(({ code }) => !questions.some((question) => question.code === code));
  if (strange) refuse("ward-unclear", `Nothing is asked about ${strange.code}.`, { pointer: "/wards" });
}

async function refuseFaulty(tx: Tx, importId: number, setAside: boolean): Promise<void> {
  if (await hasBrokenFile(tx, importId))
    refuse("import-file-broken", "Nothing of these files can be stored, because one of them breaks off.");
  const { refused = 0 } = await countLines(tx, importId);
  if (refused === 0 || setAside) return;
  const said = refused === 1 ? "1 line was refused" : `${refused} lines were refused`;
  refuse("import-lines-refused", `${said}, and the request does not hold them for repair.`, {
    pointer: "/setAside",
  });
}
