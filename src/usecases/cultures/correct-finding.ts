import { z } from "zod";
import { findingState } from "../../../shared/api/culture-entries.ts";
import { correctFinding as decide, findingFaults, type RecordedFinding } from "../../domain/cultures/finding.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { revise } from "../../domain/timeline/timeline.ts";
import { findingOf, replaceFinding } from "../../store/findings.ts";
import type { Act } from "../act.ts";
import { movedMoment } from "../record/moved-moment.ts";
import { type CultureChange, type CultureKind, changeCulture, refuseFaults } from "./change-culture.ts";
import { findingAnswer } from "./culture-answers.ts";

const findings: CultureKind<RecordedFinding> = {
  name: "finding",
  key: (findingId) => ({ findingId }),
  load: findingOf,
  replace: replaceFinding,
  current: (finding) => z.encode(findingState, findingAnswer(finding)),
};

/** A change of a finding. */
type FindingChange = Omit<CultureChange, "id"> & { readonly findingId: number };

/** What a correction gives anew; null takes a time or a number of cells away. */
interface GivenChanges {
  readonly day?: DayNumber | undefined;
  readonly time?: string | null | undefined;
  readonly present?: boolean | undefined;
  readonly cellsPerMm3?: number | null | undefined;
}

/**
 * Corrects a finding. One of another day keeps its hour unless one is given; one of another kind is another finding.
 * Refuses `stale-version`, `entry-voided`, and what a new finding is refused for.
 */
export async function correctFinding(
  act: Act,
  input: FindingChange & { readonly changes: GivenChanges },
): Promise<{ findingId: number; version: number }> {
  const { findingId, changes } = input;
  const { version } = await changeCulture(
    act,
    { ...input, id: findingId },
    {
      kind: findings,
      action: "correct-finding",
      decide: async (_tx, old, daysOf) => {
        const { present = old.present, cellsPerMm3 = old.cellsPerMm3 } = changes;
        const { when, marks, faults } = await movedMoment(old, changes, { daysOf, now: act.now });
        const finding = decide(old, { present, cellsPerMm3, ...(when && { ...when, marks }) });
        refuseFaults([...faults, ...findingFaults(finding)]);
        return finding;
      },
    },
  );
  return { findingId, version };
}

/** Voids a finding that was recorded in error; it stays readable and decides nothing. Refuses `stale-version`, `entry-voided`. */
export async function voidFinding(act: Act, input: FindingChange): Promise<{ findingId: number; version: number }> {
  const { findingId, reason } = input;
  const { version } = await changeCulture(
    act,
    { ...input, id: findingId },
    {
      kind: findings,
      action: "void-finding",
      decide: async (_tx, old) => revise(old, { voidReason: reason }),
    },
  );
  return { findingId, version };
}
