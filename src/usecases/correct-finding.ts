import { z } from "zod";
import { findingState } from "../../shared/api/culture-entries.ts";
import { correctFinding as decide, findingFaults, type RecordedFinding } from "../domain/cultures/finding.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import { showLocalTime } from "../domain/days/local-time.ts";
import { revise } from "../domain/timeline/timeline.ts";
import { findingOf, replaceFinding } from "../store/findings.ts";
import type { Act } from "./act.ts";
import {
  type CultureChange,
  type CultureKind,
  changeCulture,
  type DaysOfPatient,
  refuseFaults,
} from "./change-culture.ts";
import { findingAnswer } from "./culture-answers.ts";
import { momentOf } from "./given-signs.ts";

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
        const { present = old.present, cellsPerMm3 = old.cellsPerMm3, day = old.day, time } = changes;
        const isMoved = day !== old.day || time !== undefined;
        const moved = isMoved ? movedTo(old, { day, time }, await daysOf(), act.now) : { when: {}, faults: [] };
        const finding = decide(old, { present, cellsPerMm3, ...moved.when });
        refuseFaults([...moved.faults, ...findingFaults(finding)]);
        return finding;
      },
    },
  );
  return { findingId, version };
}

/** The day and instant of a finding that is given another day or time. */
function movedTo(
  old: RecordedFinding,
  { day, time }: { readonly day: DayNumber; readonly time: string | null | undefined },
  days: DaysOfPatient,
  now: number,
) {
  const kept = old.at === null ? null : showLocalTime(old.at, days.zone).slice("YYYY-MM-DDT".length);
  const given = { day, time: day > days.today ? null : time === undefined ? kept : time };
  const { at, marks, faults } = momentOf(given, { zone: days.zone, now, pointer: "/time" });
  const ofDay = day === old.day ? [] : days.faultsOf(day, "/day");
  return { when: { day, at, marks }, faults: [...ofDay, ...faults] };
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
