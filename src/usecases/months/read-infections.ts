import type { Month } from "../../../shared/day.ts";
import { restsOnFewTemperatures } from "../../domain/criteria/index.ts";
import { scopeIn } from "../../domain/cultures/family-of-wards.ts";
import { monthDays } from "../../domain/days/month.ts";
import { editionNamed, longestWindowDays } from "../../domain/editions/index.ts";
import { type WardInfections, wardInfections } from "../../domain/reports/infections.ts";
import { casesBetween } from "../../store/case-lists.ts";
import { determinationIn, mayCountIn } from "../../store/determinations.ts";
import { type NoneFoundRow, noneFoundIn } from "../../store/none-found.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import type { Read } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { determineByNow } from "../cultures/determine-by-now.ts";

/** The infections of a ward and month, and who confirmed that there were none. */
export interface MonthInfections extends WardInfections {
  readonly noneFound: NoneFoundRow | null;
}

/** Which wards, in which month. */
interface WardsOfMonth {
  readonly month: Month;
  readonly wardIds: readonly number[];
}

/** The infections of wards in a month, in the order in which the wards are named; time that has passed is looked at first. */
export async function readInfections(act: Act, of: WardsOfMonth): Promise<MonthInfections[]> {
  await determineByNow(act);
  return act.store.read((read) => infectionsIn(read, act.actor.facilityId, of));
}

/** The same from a snapshot that is open already, as they were determined last. */
export async function infectionsIn(
  read: Read,
  facilityId: number,
  { month, wardIds }: WardsOfMonth,
): Promise<MonthInfections[]> {
  const { first, last } = monthDays(month);
  const around = { first: first - longestWindowDays, last: last + longestWindowDays };
  const cases = (await casesBetween(read, facilityId, around)).map((one) => {
    const determined = determinationIn(one);
    const hasFewTemperatures = determined !== null && restsOnFewTemperatures(determined);
    return { ...one, mayCount: mayCountIn(one), hasHinge: (determined?.hinges ?? []).length > 0, hasFewTemperatures };
  });
  const scopes = await scopesOfFacility(read, facilityId, wardIds);
  const standing = new Map((await noneFoundIn(read, facilityId, month)).map((one) => [one.wardId, one]));
  return wardIds.map((wardId) => {
    const { edition } = scopeIn(scopes, wardId, month) ?? {};
    const watch = edition === undefined ? null : { edition, isHeld: editionNamed(edition) !== undefined };
    const noneFound = standing.get(wardId) ?? null;
    const ward = { wardId, watch, isNoneFound: noneFound !== null };
    return { ...wardInfections(cases, ward, month), noneFound };
  });
}
