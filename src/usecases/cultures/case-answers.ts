import type { z } from "zod";
import type { caseInList } from "../../../shared/api/case-entries.ts";
import { type Determination, restsOnFewTemperatures } from "../../domain/criteria/index.ts";
import { glanceAround } from "../../domain/cultures/glance.ts";
import { reportedWords, summaryWords } from "../../domain/cultures/summary-words.ts";
import { surveillanceOf } from "../../domain/cultures/surveillance-of.ts";
import { determinationWithCodes, type WardCodes } from "../../domain/cultures/ward-codes.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import { editionNamed } from "../../domain/editions/index.ts";
import type { PatientRecord } from "../../store/culture-records.ts";
import { determinationIn, type KeptDetermination } from "../../store/determinations.ts";
import type { DeterminingRules } from "./determining-rules.ts";

type Answer = z.output<typeof caseInList>;
type ListOnly = "isDischarged" | "grew" | "lookUp" | "hinges" | "hasFewTemperatures" | "closedBecause" | "glance";
type About = Omit<Answer, "isCauti" | "criterion" | "dateOfEvent" | ListOnly>;

/** What every answer about a case needs. */
export interface CaseContext {
  readonly record: PatientRecord;
  readonly codes: WardCodes;
  readonly today: DayNumber;
  /** Everything that it was determined to be, oldest first, where its last decision does not hold any more. */
  readonly history: readonly KeptDetermination[];
}

/** What every answer says of a case. */
export function aboutCase(kept: KeptDetermination, { record, codes, today, history }: CaseContext): About {
  const { caseId, subjectKind, day, revision, state, outcome } = kept;
  return {
    ...{ caseId, patientId: record.patientId, identifier: record.identifier, version: revision },
    subject: { kind: subjectKind, id: caseId, day: dayText(day) },
    // What was replaced is never read as a case.
    state: state === "replaced" ? "closed" : state,
    outcome: outcome === "gone" ? null : outcome,
    summary: summaryWords(kept, codes),
    wardId: kept.wardId ?? kept.placeId,
    ageDays: today - day,
    changed: state === "changed" ? changeOf(kept, history, codes) : null,
  };
}

/** What changed since somebody decided: from the determination that they saw to the one in force. */
function changeOf(kept: KeptDetermination, history: readonly KeptDetermination[], codes: WardCodes): About["changed"] {
  const seen = history.findLast(({ reported }) => reported === kept.decided);
  const changes = history.filter((one, i) => one.reported !== history[i - 1]?.reported);
  const { cause, reason, determinedAt: at, determinedBy: by } = changes.at(-1) ?? kept;
  const edition = (one: KeptDetermination) =>
    seen && seen.editionId !== kept.editionId ? ` (${editionNamed(one.editionId)?.title ?? one.editionId})` : "";
  const before = seen ? `${wholeWords(seen, codes)}${edition(seen)}` : "";
  return { before, after: `${wholeWords(kept, codes)}${edition(kept)}`, cause, reason, at, by };
}

/** The line of a determination with all that is reported of it. */
export function wholeWords(kept: KeptDetermination, codes: WardCodes): string {
  const determination = determinationIn(kept);
  return `${summaryWords(kept, codes)}${determination ? reportedWords(determination) : ""}`;
}

/** A case as a list shows it. */
export function caseOfList(kept: KeptDetermination, context: CaseContext, rules: DeterminingRules): Answer {
  const { record, codes, today } = context;
  const timeline = surveillanceOf(record, rules, today);
  const determination = determinationIn(kept);
  const told = determination && determinationWithCodes(determination, codes);
  const { criterion = null, dateOfEvent = null } = determination?.event ?? {};
  return {
    ...aboutCase(kept, context),
    ...{ isCauti: kept.isCauti, criterion, dateOfEvent: dateOfEvent === null ? null : dayText(dateOfEvent) },
    isDischarged: timeline.stays.every(({ dischargeDay }) => dischargeDay !== null),
    grew: grewIn(record, kept.caseId),
    lookUp: [...new Set(told?.derivation.flatMap(({ lookUp }) => lookUp ?? []))],
    hinges: (told?.hinges ?? []).map(({ point, otherAnswer }) => ({ point, otherAnswer })),
    hasFewTemperatures: determination !== null && restsOnFewTemperatures(determination),
    closedBecause: kept.state === "closed" ? closedBecause(told) : null,
    glance: glanceAround(timeline, kept.day).map(({ day, signs, ...said }) => ({
      ...said,
      ...{ day: dayText(day), signs: [...signs] },
    })),
  };
}

/** The sentence for which a culture is certain to be of no use; of a voided one there is none. */
function closedBecause(told: Determination | null): string | null {
  return told?.derivation.find(({ status }) => status === "failed")?.sentence ?? null;
}

function grewIn({ specimens }: PatientRecord, caseId: number): string[] {
  const specimen = specimens.find(({ id }) => id === caseId);
  return (specimen?.organisms ?? []).map(({ name, count }) => (count === null ? name : `${name} ${count}`));
}
