import { type GapKind, gapWords } from "../../../shared/gap-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { WardCare } from "./care.ts";
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
  /** What else its sentence says. */
  readonly detail?: string;
  /** The lines and imports that it is about, with the codes of the wards that the lines touch. */
  readonly held?: {
    readonly lines: readonly HeldLine[];
    readonly wards: readonly string[];
    readonly imports: readonly number[];
  };
}

/** The manual counts of a ward, and on how many days there is none. */
export type CountsByHand = Pick<WardCare, "wardId" | "manualCounts" | "manualCountsMissing">;

/**
 * What is missing from a period and what is doubtful in it: what keeps it from being signed first, then by ward. A day
 * without a count, and a patient of whom nobody knows where they were, are never taken for zero.
 */
export function gapsOf(
  facts: MonthFacts,
  counts: readonly CountsByHand[],
  infections: readonly WardInfections[],
): Gap[] {
  const found = [
    ...(facts.complete && facts.over ? [] : [{ kind: "period-not-over", wardId: null, count: 1, days: [] } as const]),
    ...[...facts.wards.map(({ wardId }) => wardId), null].flatMap((wardId) => uncountedGaps(wardId, facts)),
    ...facts.wards.flatMap((ward) => wardGaps(ward, facts)),
    ...counts.flatMap((counted) => countGaps(counted, facts)),
    ...undescribedGaps(facts),
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

/** Days of a ward without a manual count, and days on which the manual count differs from the record. */
function countGaps({ wardId, manualCounts, manualCountsMissing }: CountsByHand, { wards }: MonthFacts): Gap[] {
  const missing: Gap = { kind: "manual-count-missing", wardId, count: manualCountsMissing ?? 0, days: [] };
  const ward = wards.find((one) => one.wardId === wardId);
  const counted = new Map(ward?.days.map((one) => [one.day, one]));
  const pairs = manualCounts.map(({ day, patients, catheters }) => {
    const { patientDays = 0, catheterDays = 0 } = counted.get(day) ?? {};
    return { day, patients, catheters, patientDays, catheterDays };
  });
  const differing =
    // A ward whose setting is not recorded has no count to compare with.
    ward === undefined || ward.inpatient === "unknown"
      ? []
      : pairs.filter((one) => one.patients !== one.patientDays || one.catheters !== one.catheterDays);
  const sum = (key: keyof (typeof pairs)[number]) => differing.reduce((all, one) => all + one[key], 0);
  const detail =
    `Patient-days: ${sum("patients")} by manual count, ${sum("patientDays")} electronic. ` +
    `Catheter-days: ${sum("catheters")} by manual count, ${sum("catheterDays")} electronic.`;
  const days = differing.map(({ day }) => day);
  const differs: Gap = { kind: "manual-count-differs", wardId, count: days.length, days, detail };
  return [missing, differs].filter(({ count }) => count > 0);
}

/**
 * Stays that only their moves tell of, by the ward of their last move, where most stays of the period have an admission
 * of their own: their lines may be lost. Where files of moves are all that comes, nothing is.
 */
function undescribedGaps({ undescribed }: MonthFacts): Gap[] {
  const { wardIds, stays } = undescribed;
  if (wardIds.length * 2 >= stays) return [];
  return [...new Set(wardIds)].map((wardId) => {
    const count = wardIds.filter((one) => one === wardId).length;
    return { kind: "stay-not-described", wardId, count, days: [] };
  });
}

/** Days without a patient between days with one: a ward that has closed, or not opened, has none to miss. */
function emptyDays({ days }: WardFacts, { censuses }: MonthFacts): DayNumber[] {
  const counted = new Set(days.map(({ day }) => day));
  const [first = 0, last = 0] = [days[0]?.day, days.at(-1)?.day];
  return censuses.map(({ day }) => day).filter((day) => day > first && day < last && !counted.has(day));
}

/** Doubts about catheters and beds, which belong to patients rather than to wards. */
function doubts(facts: MonthFacts): Gap[] {
  const { findings } = facts;
  const kinds = ["removal-between", "not-confirmed", "bed-held-long"] as const;
  return [
    ...kinds.flatMap((kind): Gap[] => {
      const count = findings.filter((finding) => finding.kind === kind).length;
      return count === 0 ? [] : [{ kind, wardId: null, count, days: [] }];
    }),
    ...censusesWithoutHour(facts),
  ];
}

/** Times without an hour, where a census of their day could have come before or after them. */
function censusesWithoutHour({ findings, censuses }: MonthFacts): Gap[] {
  const kinds = ["removal-no-hour", "insertion-no-hour", "time-no-hour"] as const;
  return kinds.flatMap((kind): Gap[] => {
    const open = findings
      .filter((finding) => finding.kind === kind)
      .map(({ start, end }) => censuses.filter(({ at }) => start < at && (end === null || at < end)))
      .filter((unknown) => unknown.length > 0);
    const days = [...new Set(open.flat().map(({ day }) => day))].sort((a, b) => a - b);
    return open.length === 0 ? [] : [{ kind, wardId: null, count: open.length, days }];
  });
}
