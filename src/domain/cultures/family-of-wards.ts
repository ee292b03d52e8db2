import type { Month } from "../../../shared/day.ts";
import { monthOf } from "../days/month.ts";
import { familyNamed } from "../editions/index.ts";
import type { FamilyOf } from "./determine-by-ward.ts";

/** Which ward is watched in which months, by which edition. */
export interface WatchedMonths {
  readonly wardId: number;
  readonly fromMonth: Month;
  readonly toMonth: Month | null;
  readonly edition: string;
}

/** The scope of a ward in a month; undefined when it is not watched then. */
export function scopeIn<S extends WatchedMonths>(scopes: readonly S[], wardId: number, month: Month): S | undefined {
  return scopes.find(
    (one) => one.wardId === wardId && one.fromMonth <= month && (one.toMonth === null || month <= one.toMonth),
  );
}

/**
 * By whose definitions each ward is judged: those that it is watched by in the month, else those of the United States. A
 * name that is not held here counts as none.
 */
export function familyOfWards(scopes: readonly WatchedMonths[]): FamilyOf {
  return (wardId, day) => {
    const scope = wardId === null ? undefined : scopeIn(scopes, wardId, monthOf(day));
    return (scope && familyNamed(scope.edition)) ?? "us";
  };
}
