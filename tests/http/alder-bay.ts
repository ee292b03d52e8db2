import type { Role } from "../../shared/vocabulary.ts";
import { addPerson } from "../../src/store/people.ts";
import type { Store } from "../../src/store/store.ts";
import { type Act, recording } from "../../src/usecases/act.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { hospitalIn, openHospital } from "../databases/hospital.ts";

/** The instant at which the tests look at the hospital: 10:00 there. */
export const lookedAt = Date.UTC(2026, 10, 20, 15);

/** Identifiers that must not stand in any log line, address or refusal. */
export const identifiers = ["ALDER-1001", "ALDER-1002"] as const;

/**
 * November 2026 of Alder Bay Hospital (America/New_York, census at 00:00, UTC-5 in all of these instants), small
 * enough to be counted by hand:
 *
 * 3E  ALDER-1001 from Nov 1 08:00 and still there: censuses of Nov 2 to 20, 19 patient-days;
 *     catheter from Nov 2 09:00 to Nov 5 10:00: censuses of Nov 3, 4, 5
 *     ALDER-1002 from Nov 3 15:00 to Nov 6 12:00: censuses of Nov 4, 5, 6
 * 4N  ALDER-1002 from Nov 6 12:00 to Nov 10 11:00: censuses of Nov 7 to 10;
 *     catheter from Nov 6 13:00 to Nov 9 09:00: censuses of Nov 7, 8, 9
 * OBS nobody said what it is
 */
export const counted = {
  "3E": { patientDays: 22, catheterDays: 3, utilization: 3 / 22, days: 19 },
  "4N": { patientDays: 4, catheterDays: 3, utilization: 3 / 4, days: 4 },
  total: { patientDays: 26, catheterDays: 6, utilization: 6 / 26 },
} as const;

/** The hospital with its wards, and with the numbers of people who may see more or less of it. */
export interface AlderBay {
  readonly store: Store;
  readonly wards: { readonly "3E": number; readonly "4N": number; readonly OBS: number };
  /** A ward of another facility in the same installation. */
  readonly elsewhereWardId: number;
  readonly people: Readonly<Record<"prevention" | "bedside" | "manager" | "administrator" | "elsewhere", number>>;
}

/** Fills a migrated database. */
export async function fillAlderBay(url: string): Promise<AlderBay> {
  const now = Date.UTC(2026, 9, 1);
  const hospital = await openHospital(url, { now });
  const { store } = hospital;
  const act = hospital.at(lookedAt);
  const wards = {
    "3E": await hospital.addWard("3E"),
    "4N": await hospital.addWard("4N"),
    OBS: await hospital.addWard("OBS", null),
  };
  await fillWards(act, wards);
  const other = await hospitalIn(store, { now });
  const elsewhereWardId = await other.addWard("9Z");
  const own = [wards["3E"], elsewhereWardId];
  return {
    store,
    wards,
    elsewhereWardId,
    people: {
      prevention: await addOne(act, "Ash Moreno", "prevention", []),
      bedside: await addOne(act, "Kit Sandoval", "bedside", own),
      manager: await addOne(act, "Jude Okafor", "manager", own),
      administrator: await addOne(act, "Noa Lindqvist", "administrator", own),
      elsewhere: other.at(lookedAt).actor.personId,
    },
  };
}

async function fillWards(act: Act, wards: { "3E": number; "4N": number }): Promise<void> {
  const first = await admitPatient(act, {
    patient: { identifier: identifiers[0] },
    number: "S1",
    admittedAt: Date.UTC(2026, 10, 1, 13),
    wardId: wards["3E"],
  });
  await catheterize(act, first.stayId, [Date.UTC(2026, 10, 2, 14), Date.UTC(2026, 10, 5, 15)]);
  const second = await admitPatient(act, {
    patient: { identifier: identifiers[1] },
    number: "S2",
    admittedAt: Date.UTC(2026, 10, 3, 20),
    wardId: wards["3E"],
  });
  await movePatient(act, { stayId: second.stayId, movedAt: Date.UTC(2026, 10, 6, 17), wardId: wards["4N"] });
  await catheterize(act, second.stayId, [Date.UTC(2026, 10, 6, 18), Date.UTC(2026, 10, 9, 14)]);
  await dischargePatient(act, { stayId: second.stayId, dischargedAt: Date.UTC(2026, 10, 10, 16) });
}

async function catheterize(act: Act, stayId: number, [insertedAt, removedAt]: [number, number]): Promise<void> {
  await insertCatheter(act, { stayId, kind: "indwelling-urethral", inPlaceOnArrival: false, insertedAt, removedAt });
}

async function addOne(act: Act, name: string, role: Role, wardIds: readonly number[]): Promise<number> {
  return act.store.tx(async (tx) => {
    const id = tx.newId();
    await addPerson(tx, recording(act), { id, name, roles: [role], wardIds });
    return id;
  });
}
