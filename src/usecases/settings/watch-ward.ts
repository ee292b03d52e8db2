import type { Month } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import { nextMonth } from "../../domain/days/month.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { addScope, changeScope, scopeOf, scopesOfWard } from "../../store/scopes.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { determineWard } from "../cultures/determine-ward.ts";
import { sameVersion } from "../same-version.ts";
import { knownWard } from "../wards/known-ward.ts";

export interface WatchWard {
  readonly wardId: number;
  readonly fromMonth: Month;
  /** null: until further notice. */
  readonly toMonth: Month | null;
  /** The edition of the definitions, such as `us-2024`. */
  readonly edition: string;
}

/**
 * Puts a ward under surveillance for some months, by one edition of the definitions.
 * Refuses `scope-overlaps` when the ward is watched in one of these months already.
 */
export function watchWard(act: Act, input: WatchWard): Promise<{ scopeId: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    await knownWard(tx, by.facilityId, input.wardId);
    if (input.toMonth !== null && input.toMonth < input.fromMonth)
      refuse("end-before-start", "The last month is before the first.", { pointer: "/toMonth" });
    await refuseOverlap(tx, input);
    const scopeId = await addScope(tx, by, input);
    const { wardId, fromMonth: from, toMonth: to } = input;
    await determineWard(tx, by, { ...{ wardId, from, to }, cause: "watch-ward" });
    await writeAudit(tx, by, { action: "watch-ward", details: { scopeId, ...input } });
    return { scopeId };
  });
}

async function refuseOverlap(tx: Tx, months: Omit<WatchWard, "edition">, ownId?: number): Promise<void> {
  const other = (await scopesOfWard(tx, months.wardId)).find(
    (scope) =>
      scope.id !== ownId &&
      scope.fromMonth <= (months.toMonth ?? scope.fromMonth) &&
      months.fromMonth <= (scope.toMonth ?? months.fromMonth),
  );
  if (other)
    refuse("scope-overlaps", "The unit is already under surveillance in one of these months.", {
      other: `scope ${other.id}`,
    });
}

interface ChangeWatch {
  readonly wardId: number;
  readonly scopeId: number;
  readonly reason: string;
  /** The version that the person saw; left out by doors that carry none. */
  readonly seenVersion?: number;
}

/**
 * Changes the last month of a ward's scope, or voids it when it was entered in error.
 * Refuses `not-found`, `stale-version`, `end-before-start` and `scope-overlaps`.
 */
export function changeWatch(
  act: Act,
  input: ChangeWatch & ({ readonly toMonth: Month | null } | { readonly voided: true }),
): Promise<{ scopeId: number; version: number }> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason: input.reason };
    await lockFacility(tx, by.facilityId);
    const scope = await scopeOf(tx, by.facilityId, input);
    const { fromMonth, toMonth, edition, version } = scope;
    sameVersion(scope, input.seenVersion, { fromMonth, toMonth, edition, version });
    if ("toMonth" in input && input.toMonth !== null && input.toMonth < scope.fromMonth)
      refuse("end-before-start", "The last month is before the first.", { pointer: "/toMonth" });
    if ("toMonth" in input) await refuseOverlap(tx, { ...scope, toMonth: input.toMonth }, scope.id);
    await changeScope(tx, by, scope, "voided" in input ? { voidReason: input.reason } : { toMonth: input.toMonth });
    const changed = "voided" in input ? { from: fromMonth, to: toMonth } : monthsBetweenEnds(toMonth, input.toMonth);
    if (changed) await determineWard(tx, by, { wardId: scope.wardId, ...changed, cause: "change-watch" });
    await writeAudit(tx, by, { action: "change-watch", details: changeSaid(input) });
    return { scopeId: scope.id, version: version + 1 };
  });
}

/** The months that are in a scope with one end and not with the other; null when the ends are the same. */
function monthsBetweenEnds(a: Month | null, b: Month | null): { from: Month; to: Month | null } | null {
  if (a === b) return null;
  const [first, last] = a !== null && (b === null || a < b) ? [a, b] : [b, a];
  if (first === null) throw new Error("one of two different ends is a month");
  return { from: nextMonth(first), to: last };
}

function changeSaid({ seenVersion: _, ...said }: Parameters<typeof changeWatch>[1]): object {
  return said;
}
