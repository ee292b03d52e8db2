import type { AuditAction } from "../../../shared/audit-words.ts";
import { summaryOf } from "../../domain/criteria/index.ts";
import { caseStateOf, reportedText } from "../../domain/cultures/case-state.ts";
import type { PlacedDetermination } from "../../domain/cultures/determine-by-ward.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { editionNamed, longestWindowOf } from "../../domain/editions/index.ts";
import type { KeptDetermination, StoredDetermination } from "../../store/determinations.ts";

/** Why cultures are determined anew, and of what the record is known up to which day. */
export interface Determining {
  readonly cause: AuditAction;
  readonly reason: string | null;
  readonly knownThrough: DayNumber;
}

type Row = Omit<StoredDetermination, "number" | "state" | "revision" | "decision" | "decided"> & {
  readonly closes: boolean;
};

/** The row of a determination; `patientId` is the patient for whom its specimen or finding was recorded. */
export function rowOf(
  { determination, placeId, mayCount }: PlacedDetermination,
  patientId: number,
  determining: Determining,
): Row {
  const { subject, editionId, outcome, event } = determination;
  const edition = editionNamed(editionId);
  return {
    ...{ caseId: subject.id, patientId, subjectKind: subject.kind, day: subject.day, placeId, editionId, outcome },
    eventDay: event?.dateOfEvent ?? null,
    wardId: event?.wardId ?? null,
    isCauti: outcome === "event" && (event?.isCauti ?? false),
    closes: determination.closes,
    summary: summaryOf(determination),
    reported: reportedText(determination),
    mayCount: mayCount && JSON.stringify(mayCount),
    body: JSON.stringify(determination),
    // From the day after its window has closed on, nothing more comes with time alone.
    settlesOn: subject.day + (edition ? longestWindowOf(edition) : 0) + 1,
    ...determining,
  };
}

/** The row of a case whose specimen or finding does not stand any more. */
export function goneRow(before: KeptDetermination, determining: Determining): Row {
  const { caseId, patientId, subjectKind, day, placeId, editionId, settlesOn, mayCount } = before;
  return {
    ...{ caseId, patientId, subjectKind, day, placeId, editionId, settlesOn, mayCount },
    ...{
      outcome: "gone",
      eventDay: null,
      wardId: null,
      isCauti: false,
      closes: true,
      summary: "nothing to determine any more",
    },
    ...{ reported: reportedText(null), body: "null", ...determining },
  };
}

/** What of a row says how far the work on it is. */
export function caseSaid({
  outcome,
  closes,
  reported,
  mayCount,
}: Pick<Row, "outcome" | "closes" | "reported" | "mayCount">) {
  return { outcome, closes, reported, isOutOfScope: mayCount === "[]" };
}

/** The row as the next one of its case: with the work that was done on it so far. */
export function nextRow({ closes, ...row }: Row, before: KeptDetermination | undefined): StoredDetermination {
  const { number = 0, revision = 0, decision = null, decided = null } = before ?? {};
  const state = caseStateOf(caseSaid({ ...row, closes }), { decision, decided });
  return { ...row, number: number + 1, revision: revision + 1, decision, decided, state };
}
