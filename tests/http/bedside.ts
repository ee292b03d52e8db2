import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import type { Desk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

/** What is done at the bedside of ward 3E before a catheter can be spoken of. */
export interface Bedside {
  /** 16 November 2026, 09:00 in the hospital: an hour after the admission. */
  readonly insertedAt: string;
  admit(name: string, birthDay?: string): Promise<{ patientId: number; stayId: number }>;
  /** An insertion with all that the built-in policy asks for. */
  insertion(stayId: number): ReturnType<typeof insertionOf>;
  /** A patient with such a catheter. */
  withCatheter(name: string): Promise<{ patientId: number; stayId: number; catheterId: number }>;
}

const insertedAt = "2026-11-16T09:00";

export function bedsideOf(desk: Desk): Bedside {
  const admit: Bedside["admit"] = async (name, birthDay) => {
    const said = { identifier: name, number: `S-${name}`, admittedAt: "2026-11-16T08:00", bed: "7" };
    const born = birthDay === undefined ? {} : { birthDay: day.parse(birthDay) };
    return desk.ask(endpoints.admitPatient, { wardId: desk.hospital.wards["3E"], ...said, ...born });
  };
  return {
    ...{ insertedAt, admit, insertion: insertionOf },
    withCatheter: async (name) => {
      const { patientId, stayId } = await admit(name);
      const { catheterId } = await desk.ask(endpoints.insertCatheter, insertionOf(stayId));
      return { patientId, stayId, catheterId };
    },
  };
}

function insertionOf(stayId: number) {
  return {
    ...{ stayId, kind: "indwelling-urethral" as const, insertedAt },
    ...{ indication: "perioperative", sizeFr: 14, balloonMl: 10, record: fullRecord },
  };
}
