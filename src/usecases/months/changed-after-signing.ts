import { auditActions } from "../../../shared/audit-words.ts";
import type { Month } from "../../../shared/day.ts";
import type { ChangedEntry } from "../../../shared/signed-changes.ts";
import { type ChangedRow, changedRows } from "../../domain/reports/changes-after-signing.ts";
import { namesOf } from "../../store/people.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { readMonthSignatures } from "./read-signatures.ts";

/**
 * What changed a month since its latest signature, for its files: the figures within reach, each with the act, who and
 * when. Nothing for a month without a signature. Refuses `in-the-future`.
 */
export async function changedAfterSigning(act: Act, input: { month: Month } & Reach): Promise<ChangedRow[]> {
  const { differences, changes } = await readMonthSignatures(act, input);
  const open = changes.filter(({ isOpen }) => isOpen);
  const names = await act.store.read((read) => namesOf(read, [...new Set(open.map(({ by }) => by))]));
  return changedRows({
    differences,
    changes: open.map(({ action, entry, by, at, figures }) => ({
      ...{ what: auditActions[action], entry: entryText(entry), who: names.get(by) ?? `#${by}` },
      ...{ when: new Date(at).toISOString(), figures },
    })),
  });
}

function entryText(entry: ChangedEntry | null): string {
  return entry === null ? "" : `${entry.kind === "ward" ? "unit" : entry.kind} ${entry.id}`;
}
