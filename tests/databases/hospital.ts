import type { CensusTime } from "../../shared/day.ts";
import type { WardSetting } from "../../shared/vocabulary.ts";
import type { Instant } from "../../src/domain/days/day-number.ts";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import type { Act } from "../../src/usecases/act.ts";
import { setUpFacility } from "../../src/usecases/settings/set-up-facility.ts";
import { addWard } from "../../src/usecases/wards/add-ward.ts";

/** The fictional Alder Bay Hospital in a database, ready to act in. */
export interface Hospital {
  readonly store: Store;
  /** Acts at `now`. */
  at(now: Instant): Act;
  addWard(code: string, setting?: WardSetting | null): Promise<number>;
}

interface HospitalOptions {
  readonly zone?: string;
  readonly census?: string;
  readonly now: Instant;
}

/** Sets up a hospital in a migrated database. */
export function openHospital(url: string, options: HospitalOptions): Promise<Hospital> {
  return hospitalIn(openStore(url), options);
}

/** Sets up one more hospital in a store: facilities do not see each other. */
export async function hospitalIn(
  store: Store,
  { zone = "America/New_York", census = "00:00", now }: HospitalOptions,
): Promise<Hospital> {
  const actor = await setUpFacility(
    { store, now },
    {
      name: "Alder Bay Hospital",
      zone,
      censusTime: census as CensusTime,
      person: { name: "Robin Vale", roles: ["prevention", "administrator"] },
    },
  );
  return {
    store,
    at: (at) => ({ store, actor, now: at }),
    addWard: async (code, setting = "inpatient") => {
      const ward = { code, name: `Ward ${code}`, type: null, setting, beds: null, openedDay: null };
      return (await addWard({ store, actor, now }, ward)).wardId;
    },
  };
}
