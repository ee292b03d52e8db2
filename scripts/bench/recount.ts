import { type CountingRules, visitClosedPatientDays } from "../../src/domain/counting/patient-days.ts";
import { countedTimelines } from "../../src/store/counted-timelines.ts";
import { openStore } from "../../src/store/open-store.ts";
import { patientPage } from "../../src/store/patient-pages.ts";
import type { Store } from "../../src/store/store.ts";
import { loadCountingRules } from "../../src/usecases/months/counting-rules.ts";
import { benchFacility } from "./history-size.ts";
import { addToCounts, emptyCounts, type WardDayCounts } from "./ward-day-counts.ts";

const patientsAtATime = 1000;

/** The rules of the benches' facility for the days from `first` to `last`. */
export function rulesOf(store: Store, { first, last }: { first: number; last: number }): Promise<CountingRules> {
  return store.read((read) => loadCountingRules(read, benchFacility, () => ({ first, last })));
}

/** Counts every ward day anew from the stored stays, as the ledger does: patient by patient, some at a time. */
export async function recount(
  file: string,
  { wards, first, last }: { wards: number; first: number; last: number },
): Promise<WardDayCounts> {
  const store = openStore(file);
  try {
    const rules = await rulesOf(store, { first, last });
    const counts = emptyCounts(wards, first, last - first + 1);
    const add = (day: number, ward: number, _stay: number, catheter: boolean) =>
      addToCounts(counts, { ward, day, patients: 1, catheters: catheter ? 1 : 0 });
    for (let after = 0; ; ) {
      const ids = await store.read((read) => patientPage(read, benchFacility, after, patientsAtATime));
      const end = ids.at(-1);
      if (end === undefined) return counts;
      const timelines = await store.read((read) => countedTimelines(read, ids));
      for (const timeline of timelines) visitClosedPatientDays(timeline, rules, add);
      after = end;
    }
  } finally {
    await store.close();
  }
}
