import { Problem, refuse } from "../../../shared/problems.ts";
import { writeAudit } from "../../store/audit.ts";
import { type BaselineRow, baselines } from "../../store/baselines.ts";
import { addComparison, type ComparisonRow, comparisons } from "../../store/comparisons.ts";
import { lockFacility } from "../../store/facilities.ts";
import { type Act, recording } from "../act.ts";
import { knownWard } from "../wards/known-ward.ts";

export interface SetComparison extends Omit<ComparisonRow, "number" | "recordedAt" | "recordedBy"> {
  /** The latest number that the person saw, 0 for none. */
  readonly replaces: number;
}

/**
 * Says with which baselines months are compared from a month on. What was signed keeps the baseline by which it was
 * signed. Refuses `stale-version`, `baseline-of-another-kind` and `not-found` for a baseline or ward.
 */
export function setComparison(act: Act, { replaces, ...said }: SetComparison): Promise<{ number: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    const latest = (await comparisons(tx, by.facilityId)).at(-1);
    refuseStale(latest, replaces);
    const known = await baselines(tx, by.facilityId);
    refuseOther(known, said.infectionBaselineId, { not: "utilization-model", pointer: "/infectionBaselineId" });
    refuseOther(known, said.utilizationBaselineId, { not: "infection-model", pointer: "/utilizationBaselineId" });
    for (const wardId of new Set(said.factors.flatMap((factor) => factor.wardId ?? []))) {
      await knownWard(tx, by.facilityId, wardId);
    }
    const number = (latest?.number ?? 0) + 1;
    await addComparison(tx, by, { ...said, number });
    await writeAudit(tx, by, { action: "set-comparison", details: { number, fromMonth: said.fromMonth } });
    return { number };
  });
}

function refuseStale(latest: ComparisonRow | undefined, replaces: number): void {
  const number = latest?.number ?? 0;
  if (number === replaces) return;
  const problem = new Problem({
    code: "stale-version",
    pointer: "/replaces",
    detail: `The latest version is number ${number} by now.`,
  });
  problem.current = latest ? { ...latest, recordedAt: new Date(latest.recordedAt).toISOString() } : {};
  throw problem;
}

function refuseOther(
  known: readonly BaselineRow[],
  id: number | null,
  { not, pointer }: { not: BaselineRow["kind"]; pointer: string },
): void {
  if (id === null) return;
  const found = known.find((baseline) => baseline.id === id);
  if (!found) refuse("not-found", "There is no such baseline.", { pointer });
  if (found.kind === not) refuse("baseline-of-another-kind", "The baseline predicts something else.", { pointer });
}
