import type { Instant } from "../../domain/days/day-number.ts";
import type { Zone } from "../../domain/days/zone.ts";
import { type PatientLine, placeOf } from "../../domain/intake/intake-line.ts";
import type { LineFault, Outcome } from "../../domain/intake/outcome.ts";
import { saidInCell } from "../../domain/intake/said-in-cell.ts";
import { clockToleranceMs } from "../act.ts";
import type { PatientGroup } from "./plan-group.ts";

const timeColumns = [
  "admitted",
  "discharged",
  "from",
  "to",
  "inserted",
  "removed",
  "last_seen",
  "day",
  "written",
  "collected",
];

/**
 * Takes out the lines that speak of times which have not come yet, with everything else that is said of a stay whose
 * own line does, and says what becomes of them.
 */
export function refuseFutureLines(
  groups: readonly PatientGroup[],
  now: Instant,
  zone: Zone,
): { groups: PatientGroup[]; outcomes: [PatientLine, Outcome][] } {
  const outcomes: [PatientLine, Outcome][] = [];
  const stays = new Map(
    groups.flatMap(({ lines }) =>
      lines.flatMap((line) =>
        line.file === "stays.csv" && futureFaults(line, now, zone).length > 0
          ? [[line.values.stay, placeOf(line)] as const]
          : [],
      ),
    ),
  );
  const left = groups.map((group) => ({
    ...group,
    lines: group.lines.filter((line) => {
      const own = futureFaults(line, now, zone);
      const faults = own.length > 0 ? own : stayFaults(line, stays.get(line.values.stay));
      if (faults.length > 0) outcomes.push([line, { state: "refused", faults }]);
      return faults.length === 0;
    }),
  }));
  return { groups: left, outcomes };
}

function stayFaults(line: PatientLine, other: string | undefined): LineFault[] {
  if (other === undefined || line.file === "stays.csv") return [];
  return [{ code: "stay-refused", column: "stay", detail: "The line of its stay was refused.", other }];
}

function futureFaults(line: PatientLine, now: Instant, zone: Zone): LineFault[] {
  const values = line.values as Readonly<Record<string, unknown>>;
  const born = values.birth_date;
  if (typeof born === "number" && born > zone.dayOf(now))
    return [{ code: "in-the-future", column: "birth_date", detail: "This day has not come yet." }];
  return timeColumns.flatMap((column): LineFault[] => {
    const at = values[column];
    // Of a day whose time nobody gave noon was taken: whether it has come is another question.
    if (line.marks.some((mark) => mark.kind === "time-unknown" && mark.column === column)) return [];
    if (typeof at !== "number" || at <= now + clockToleranceMs) return [];
    return [{ code: "in-the-future", column, detail: `This time has not come yet.${saidInCell(line, column, zone)}` }];
  });
}
