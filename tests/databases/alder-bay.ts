import type { WardSetting } from "../../shared/vocabulary.ts";
import type { Recording } from "../../src/store/patients.ts";
import type { Store } from "../../src/store/store.ts";
import { type Act, recording } from "../../src/usecases/act.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { hospitalIn } from "./hospital.ts";
import { utc } from "./utc.ts";

/** A hospital in UTC with two inpatient wards, A and B, in which a test tells its story. */
export interface AlderBay {
  readonly store: Store;
  readonly facilityId: number;
  readonly personId: number;
  /** Ward A. */
  readonly a: number;
  /** Ward B. */
  readonly b: number;
  /** Acts at that time. */
  at(time: string): Act;
  /** Who records at that time. */
  by(time: string): Recording;
  addWard(code: string, setting: WardSetting | null): Promise<number>;
  admit(identifier: string, time: string, more?: { wardId?: number; number?: string }): Promise<Admitted>;
  /** Admits and discharges; both are recorded at the second time. */
  stay(identifier: string, from: string, to: string, more?: { wardId?: number; number?: string }): Promise<Admitted>;
}

export interface Admitted {
  readonly patientId: number;
  readonly stayId: number;
  readonly wardStayId: number;
}

/** Sets the hospital up on 2024-01-01, with the census at midnight that begins the day unless told otherwise. */
export async function alderBay(store: Store, census = "00:00"): Promise<AlderBay> {
  const hospital = await hospitalIn(store, { zone: "UTC", census, now: utc("2024-01-01 00:00") });
  const at = (time: string) => hospital.at(utc(time));
  const { facilityId, personId } = at("2024-01-01 00:00").actor;
  const a = await hospital.addWard("A");
  const b = await hospital.addWard("B");
  let stays = 0;
  const admit: AlderBay["admit"] = (identifier, time, more = {}) => {
    const number = more.number ?? `S${++stays}`;
    return admitPatient(at(time), {
      patient: { identifier },
      number,
      admittedAt: utc(time),
      wardId: more.wardId ?? a,
    });
  };
  return {
    ...{ store, facilityId, personId, a, b, at, admit },
    by: (time) => recording(at(time)),
    addWard: hospital.addWard,
    stay: async (identifier, from, to, more) => {
      const admitted = await admit(identifier, from, more);
      await dischargePatient(at(to), { stayId: admitted.stayId, dischargedAt: utc(to) });
      return admitted;
    },
  };
}
