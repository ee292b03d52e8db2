import type { CensusTime } from "../../shared/day.ts";
import { openStore } from "../../src/store/open-store.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { writeNote } from "../../src/usecases/record/write-note.ts";
import { setUpFacility } from "../../src/usecases/settings/set-up-facility.ts";
import { addWard } from "../../src/usecases/wards/add-ward.ts";

const hourMs = 3_600_000;

/** A ward on which every patient has a catheter. */
export interface FullWard {
  readonly wardId: number;
  readonly catheterIds: readonly number[];
}

/** Fills a migrated database with one ward, its patients admitted four days before `now` and reviewed each day since. */
export async function fillWard(url: string, { now, patients }: { now: number; patients: number }): Promise<FullWard> {
  const store = openStore(url);
  try {
    const person = { name: "First person", roles: ["prevention", "administrator"] } as const;
    const settings = {
      name: "Alder Bay Hospital",
      zone: "America/New_York",
      censusTime: "00:00" as CensusTime,
      person,
    };
    const actor = await setUpFacility({ store, now: now - 1000 * hourMs }, settings);
    const act = { store, actor, now };
    const ward = {
      code: "3E",
      name: "Ward 3E",
      type: null,
      setting: "inpatient",
      beds: patients,
      openedDay: null,
    } as const;
    const { wardId } = await addWard(act, ward);
    const catheterIds: number[] = [];
    for (let i = 0; i < patients; i++) {
      const admittedAt = now - 96 * hourMs;
      const patient = { identifier: `ALDER-${i}` };
      const { stayId } = await admitPatient(act, { patient, number: `S${i}`, admittedAt, wardId, bed: String(i + 1) });
      const insertedAt = admittedAt + hourMs;
      const insertion = { stayId, kind: "indwelling-urethral", inPlaceOnArrival: false, insertedAt } as const;
      const { catheterId } = await insertCatheter(act, insertion);
      for (const daysAgo of [3, 2, 1]) {
        const at = now - daysAgo * 24 * hourMs;
        await writeNote(act, { catheterId, kind: "review", at, outcome: "keep", indication: "perioperative" });
      }
      catheterIds.push(catheterId);
    }
    return { wardId, catheterIds };
  } finally {
    await store.close();
  }
}
