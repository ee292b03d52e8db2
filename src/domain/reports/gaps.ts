import { type GapKind, gapWords } from "../../../shared/gap-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import { uncountedGapKinds } from "./gap-sentence.ts";
import { infectionGaps, type WardInfections } from "./infections.ts";
import { type HeldLine, heldGaps, nothingHeld } from "./line-gaps.ts";
import type { MonthFacts, WardFacts } from "./month-facts.ts";

/** Something that is missing from a period, or doubtful in it. */
export interface Gap {
  readonly kind: GapKind;
  /** The ward it belongs to; null when it belongs to none alone. */
  readonly wardId: number | null;
  readonly count: number;
  /** The days of the period that it touches, in order; none when it is not a matter of days. */
  readonly days: readonly DayNumber[];
  /** The lines and imports that it is about, with the codes of the wards that the lines touch. */
  readonly held?: {
    readonly lines: readonly HeldLine[];
    readonly wards: readonly string[];
    readonly imports: readonly number[];
  };
}

/** Days of wards that were to be counted by hand and were not. */
export interface MissingCounts {
  readonly wardId: number;
  readonly days: number;
}

/**
 * What is missing from a period and what is doubtful in it: what keeps it from being signed first, then by ward. A day
 * without a count, and a patient of whom nobody knows where they were, are never taken for zero.
 */
export function gapsOf(
  facts: MonthFacts,
  counts: readonly MissingCounts[],
  infections: readonly WardInfections[],
): Gap[] {
  const found = [
    ...(facts.complete && facts.over ? [] : [{ kind: "period-not-over", wardId: null, count: 1, days: [] } as const]),
    ...[...facts.wards.map(({ wardId }) => wardId), null].flatMap((wardId) => uncountedGaps(wardId, facts)),
    ...facts.wards.flatMap((ward) => wardGaps(ward, facts)),
    ...counts
      .filter(({ days }) => days > 0)
      .map(({ wardId, days }): Gap => ({ kind: "manual-count-missing", wardId, count: days, days: [] })),
    ...infectionGaps(infections, facts.complete),
    ...heldGaps(facts.held ?? nothingHeld, facts),
    ...doubts(facts),
  ];
  const isBlocking = ({ kind }: Gap): boolean => gapWords[kind].blocks;
  return [...found.filter(isBlocking), ...found.filter((gap) => !isBlocking(gap))];
}

function wardGaps(ward: WardFacts, facts: MonthFacts): Gap[] {
  const { wardId } = ward;
  if (ward.inpatient === "unknown") return [{ kind: "setting-missing", wardId, count: 1, days: [] }];
  const early = facts.findings.filter((finding) => finding.kind === "ward-not-open" && finding.wardId === wardId);
  const empty = emptyDays(ward, facts);
  const gaps: Gap[] = [
    { kind: "ward-not-open", wardId, count: early.length, days: [] },
    { kind: "nobody-counted", wardId, count: ward.inpatient !== "none" && ward.patientDays === 0 ? 1 : 0, days: [] },
    { kind: "no-patient", wardId, count: empty.length, days: empty },
  ];
  return gaps.filter(({ count }) => count > 0);
}

/** Patient-days that may be missing from a ward, or from no ward that can be told, one for each patient and census. */
function uncountedGaps(wardId: number | null, { uncounted }: MonthFacts): Gap[] {
  return (["no-ward", "outpatient"] as const).flatMap((kind): Gap[] => {
    const days = uncounted.filter((one) => one.kind === kind && one.wardId === wardId).map(({ day }) => day);
    const inOrder = [...new Set(days)].sort((a, b) => a - b);
    return days.length === 0 ? [] : [{ kind: uncountedGapKinds[kind], wardId, count: days.length, days: inOrder }];
  });
}

/** Days without a patient between days with one: a ward that has closed, or not opened, has none to miss. */
function emptyDays({ days }: WardFacts, { censuses }: MonthFacts): DayNumber[] {
  const counted = new Set(days.map(({ day }) => day));
  const [first = 0, last = 0] = [days[0]?.day, days.at(-1)?.day];
  return censuses.map(({ day }) => day).filter((day) => day > first && day < last && !counted.has(day));
}

/** Doubts about catheters and beds, which belong to patients rather than to wards. */
function doubts({ findings }: MonthFacts): Gap[] {
  const kinds = ["removal-between", "not-confirmed", "bed-held-long"] as const;
  return kinds.flatMap((kind): Gap[] => {
    const count = findings.filter((finding) => finding.kind === kind).length;
    return count === 0 ? [] : [{ kind, wardId: null, count, days: [] }];
  });
}
