import type { GapKind } from "../../../shared/gap-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { Gap } from "./gaps.ts";

/** A determined culture as far as counts go. */
export interface CountedCase {
  /** The ward of its event, and the ward at collection. */
  readonly wardId: number | null;
  readonly placeId: number | null;
  readonly eventDay: DayNumber | null;
  readonly day: DayNumber;
  readonly isCauti: boolean;
  readonly outcome: string;
  readonly state: string;
  /** Another reading of an open point would give another answer. */
  readonly hasHinge: boolean;
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
  readonly cautis: number;
  readonly waiting: number;
  readonly cannotTell: number;
  /** Those of them that nobody has decided about. */
  readonly cannotTellOpen: number;
  readonly pending: number;
  /** Closed automatically, because they certainly cannot count. */
  readonly closed: number;
  /** All determined cultures of the month, and those of them whose answer hinges on an open reading. */
  readonly determined: number;
  readonly hinging: number;
  readonly isNoneFound: boolean;
}

interface Days {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/** How many days after a month a culture may still tell something of an event in it: the window reaches 3 days. */
export const daysAfterMonth = 3;

/** The ward to which a case counts: that of its event, else the ward at collection. */
export function wardOfCase({ wardId, placeId }: Pick<CountedCase, "wardId" | "placeId">): number | null {
  return wardId ?? placeId;
}

/**
 * The infections of a ward over some days: confirmed ones count under location of attribution and date of event; what
 * nobody confirmed, what cannot be told and what the laboratory has not reported stand beside them and are no zero.
 */
export function wardInfections(
  cases: readonly CountedCase[],
  ward: Pick<WardInfections, "wardId" | "watch" | "isNoneFound">,
  { first, last }: Days,
): WardInfections {
  const own = cases.filter((one) => wardOfCase(one) === ward.wardId);
  const inside = own.filter(({ eventDay, day }) => (eventDay ?? day) >= first && (eventDay ?? day) <= last);
  const isOpen = ({ state }: CountedCase) => state === "waiting" || state === "changed";
  const unsure = inside.filter(({ outcome }) => outcome === "cannot-tell");
  const count = (list: readonly CountedCase[], fits: (one: CountedCase) => boolean) => list.filter(fits).length;
  return {
    ...ward,
    cautis: count(inside, ({ isCauti, state }) => isCauti && (state === "confirmed" || state === "disagreed")),
    waiting: count(inside, (one) => isOpen(one) && one.outcome !== "cannot-tell"),
    cannotTell: unsure.length,
    cannotTellOpen: count(unsure, isOpen),
    closed: count(inside, ({ state }) => state === "closed"),
    determined: inside.length,
    hinging: count(inside, ({ hasHinge }) => hasHinge),
    pending: count(own, ({ state, day }) => state === "pending" && day >= first && day <= last + daysAfterMonth),
  };
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
