import type { Month } from "../../../shared/day.ts";
import type { GapKind } from "../../../shared/gap-words.ts";
import type { MayCount } from "../cultures/may-count.ts";
import type { DayNumber } from "../days/day-number.ts";
import { monthOf } from "../days/month.ts";
import type { Gap } from "./gaps.ts";

/** A determined culture as far as counts go. */
export interface CountedCase {
  readonly caseId: number;
  /** The ward of its event, and the ward at collection. */
  readonly wardId: number | null;
  readonly placeId: number | null;
  readonly eventDay: DayNumber | null;
  readonly day: DayNumber;
  readonly isCauti: boolean;
  readonly outcome: string;
  readonly state: string;
  /** Where an event of it could count; null when that cannot be said. */
  readonly mayCount: readonly MayCount[] | null;
}

/** The same, with whether another reading of an open point would give another answer. */
export interface CaseOfMonth extends CountedCase {
  readonly hasHinge: boolean;
  /** It rests on temperatures of fewer than half of the days in which a fever would count. */
  readonly hasFewTemperatures: boolean;
}

/** A culture beside the count: it may still become an infection of the ward, or no one can say whether it is one. */
export interface OpenCulture {
  readonly caseId: number;
  readonly as: "waiting" | "cannot-tell" | "pending";
}

/** How a ward is watched in a month. */
export interface WardWatch {
  readonly edition: string;
  readonly isHeld: boolean;
}

/** The infections of a ward in a month, with what stands beside the count. */
export interface WardInfections {
  readonly wardId: number;
  readonly watch: WardWatch | null;
  /** Confirmed ones; of a ward that is not under surveillance they are in no count. */
  readonly cautis: number;
  readonly waiting: number;
  readonly cannotTell: number;
  /** Those of them that nobody has decided about. */
  readonly cannotTellOpen: number;
  readonly pending: number;
  /** Closed automatically, because they certainly cannot count. */
  readonly closed: number;
  /** All determined cultures of the month that were not entered in error, and those of them whose answer hinges on an open reading. */
  readonly determined: number;
  readonly hinging: number;
  /** Those of them that rest on temperatures of fewer than half of the days in which a fever would count. */
  readonly fewTemperatures: number;
  /** All of these, each with its case: the count, and what is made of it, is not final while there are some. */
  readonly open: readonly OpenCulture[];
  readonly isNoneFound: boolean;
}

/** How many days after a month a culture whose places were never worked out may still tell of an event in it. */
const daysAfterMonth = 3;

/** The ward to which a case counts: that of its event, else the ward at collection. */
function wardOfCase({ wardId, placeId }: Pick<CountedCase, "wardId" | "placeId">): number | null {
  return wardId ?? placeId;
}

/**
 * What a culture is beside the count; null for what is counted, closed or out of scope. What cannot be told stays beside
 * the count also when a person has confirmed that no one can tell.
 */
export function openAs({ state, outcome }: Pick<CountedCase, "state" | "outcome">): OpenCulture["as"] | null {
  if (state === "out-of-scope" || state === "closed") return null;
  if (state === "pending") return "pending";
  if (outcome === "cannot-tell") return "cannot-tell";
  return state === "waiting" || state === "changed" ? "waiting" : null;
}

/**
 * Where a culture beside the count stands: with the ward and month of its event, or at collection, while that is one
 * under surveillance in which it could count; else with the one that it would fall to last. What the laboratory has not
 * reported, and what cannot be told, stands with each ward and month in which it could count.
 */
export function placesOfOpen(one: CountedCase): MayCount[] {
  const wardId = wardOfCase(one);
  const own = wardId === null ? [] : [{ wardId, month: monthOf(one.eventDay ?? one.day) }];
  const { mayCount } = one;
  if (openAs(one) === "waiting" || one.eventDay !== null) {
    if (mayCount === null || mayCount.length === 0) return own;
    const isOwn = mayCount.some((place) => place.wardId === own[0]?.wardId && place.month === own[0]?.month);
    return isOwn ? own : mayCount.slice(-1);
  }
  if (mayCount !== null && mayCount.length > 0) return [...mayCount];
  const before = wardId === null ? [] : [{ wardId, month: monthOf(one.day - daysAfterMonth) }];
  return before[0]?.month === own[0]?.month ? own : [...before, ...own];
}

/**
 * The infections of a ward in a month: confirmed ones count under location of attribution and date of event; what no one
 * has confirmed, what cannot be told and what the laboratory has not reported are beside them and are no zero.
 */
export function wardInfections(
  cases: readonly CaseOfMonth[],
  ward: Pick<WardInfections, "wardId" | "watch" | "isNoneFound">,
  month: Month,
): WardInfections {
  const isHere = (place: MayCount) => place.wardId === ward.wardId && place.month === month;
  const isCounted = (one: CountedCase) => one.isCauti && (one.state === "confirmed" || one.state === "disagreed");
  const beside = cases.flatMap((one) => {
    const as = openAs(one);
    return as !== null && placesOfOpen(one).some(isHere) ? [{ one, as }] : [];
  });
  const stands = cases.filter(({ outcome }) => outcome !== "gone");
  const inside = stands.filter((one) => wardOfCase(one) === ward.wardId && monthOf(one.eventDay ?? one.day) === month);
  const count = (fits: (one: CaseOfMonth) => boolean) => inside.filter(fits).length;
  const countAs = (as: OpenCulture["as"]) => beside.filter((open) => open.as === as).length;
  const isUndecided = ({ state }: CountedCase) => state === "waiting" || state === "changed";
  return {
    ...ward,
    cautis: count(isCounted),
    waiting: countAs("waiting"),
    cannotTell: countAs("cannot-tell"),
    cannotTellOpen: beside.filter(({ one, as }) => as === "cannot-tell" && isUndecided(one)).length,
    closed: count(({ state }) => state === "closed"),
    determined: inside.length,
    hinging: count(({ hasHinge }) => hasHinge),
    fewTemperatures: count(({ hasFewTemperatures }) => hasFewTemperatures),
    pending: countAs("pending"),
    open: beside.map(({ one, as }) => ({ caseId: one.caseId, as })),
  };
}

/** How many cultures of wards together are beside the count; one that could count on several is one. */
export function openTogether(
  wards: readonly Pick<WardInfections, "open">[],
): Record<OpenCulture["as"] | "all", number> {
  const cases = new Map(wards.flatMap(({ open }) => open.map(({ caseId, as }) => [caseId, as] as const)));
  const count = (as: OpenCulture["as"]) => [...cases.values()].filter((one) => one === as).length;
  return {
    waiting: count("waiting"),
    "cannot-tell": count("cannot-tell"),
    pending: count("pending"),
    all: cases.size,
  };
}

/** Says of confirmed CAUTIs that no month counts, because their ward was not under surveillance; nothing without any. */
export function unwatchedSentences(wards: readonly { readonly code: string; readonly count: number }[]): string[] {
  const some = wards.filter(({ count }) => count > 0);
  if (some.length === 0) return [];
  return [
    `Confirmed CAUTIs not counted: ${some.map(({ code, count }) => `${count} on ${code}`).join(", ")}, not under surveillance.`,
  ];
}

/** What of the infections keeps a month from being signed. "None found" is asked for once the month is over. */
export function infectionGaps(wards: readonly WardInfections[], isOver: boolean): Gap[] {
  return wards.flatMap((ward) => {
    const { wardId, watch, cautis, waiting, isNoneFound } = ward;
    const isMissing = isOver && watch !== null && !isNoneFound && cautis === 0 && waiting === 0;
    const counts: readonly (readonly [GapKind, number])[] = [
      ["edition-unknown", watch !== null && !watch.isHeld ? 1 : 0],
      ["cultures-waiting", waiting],
      ["cannot-be-determined", ward.cannotTellOpen],
      ["cultures-pending", ward.pending],
      ["none-found-missing", isMissing ? 1 : 0],
    ];
    return counts.flatMap(([kind, count]): Gap[] => (count === 0 ? [] : [{ kind, wardId, count, days: [] }]));
  });
}
