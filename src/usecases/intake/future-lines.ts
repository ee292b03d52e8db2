import type { Instant } from "../../domain/days/day-number.ts";
import type { PatientLine } from "../../domain/intake/intake-line.ts";
import type { LineFault, Outcome } from "../../domain/intake/outcome.ts";
import { clockToleranceMs } from "../act.ts";
import type { PatientGroup } from "./plan-group.ts";

const timeColumns = ["admitted", "discharged", "from", "to", "inserted", "removed", "last_seen"];

/** Takes out the lines that speak of times which have not come yet, and says what becomes of them. */
export function refuseFutureLines(
  groups: readonly PatientGroup[],
  now: Instant,
): { groups: PatientGroup[]; outcomes: [PatientLine, Outcome][] } {
  const outcomes: [PatientLine, Outcome][] = [];
  const left = groups.map((group) => ({
    ...group,
    lines: group.lines.filter((line) => {
      const faults = futureFaults(line, now);
      if (faults.length > 0) outcomes.push([line, { state: "refused", faults }]);
      return faults.length === 0;
    }),
  }));
  return { groups: left, outcomes };
}

function futureFaults(line: PatientLine, now: Instant): LineFault[] {
  const values = line.values as Readonly<Record<string, unknown>>;
  return timeColumns.flatMap((column): LineFault[] => {
    const at = values[column];
    if (typeof at !== "number" || at <= now + clockToleranceMs) return [];
    return [{ code: "in-the-future", column, detail: "This time has not come yet." }];
  });
}
