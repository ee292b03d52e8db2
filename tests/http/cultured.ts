import { endpoints } from "../../shared/api/index.ts";
import { signName } from "../../shared/culture-words.ts";
import { day } from "../../shared/day.ts";
import type { Desk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

let made = 0;

/**
 * A patient of 3E with a catheter since 5 November 2026, a culture of the 12th, and a fever on that day; or, not `warm`,
 * every sign was looked for and absent.
 */
export async function cultured(desk: Desk, { grew = "Escherichia coli", warm = true } = {}) {
  const identifier = `CASE-${++made}`;
  const { patientId, stayId } = await desk.ask(endpoints.admitPatient, {
    ...{ wardId: desk.hospital.wards["3E"], identifier, number: `S-${identifier}` },
    ...{ birthDay: day.parse("1960-05-05"), admittedAt: "2026-11-05T08:00" },
  });
  await desk.ask(endpoints.insertCatheter, {
    ...{ stayId, kind: "indwelling-urethral", insertedAt: "2026-11-05T09:00", indication: "perioperative" },
    ...{ sizeFr: 14, balloonMl: 10, record: fullRecord },
  });
  const found = warm
    ? [{ sign: "temperature" as const, finding: "present" as const, temperature: "38.6 °C" }]
    : signName.options.map((sign) => ({ sign, finding: "absent" as const }));
  const { signIds } = await desk.ask(endpoints.recordSigns, { patientId, day: day.parse("2026-11-12"), signs: found });
  const { specimenId } = await desk.ask(endpoints.recordSpecimen, {
    ...{ patientId, kind: "urine", method: "culture", status: "final", collectedAt: "2026-11-12T07:00" },
    organisms: [grew === "No growth" ? { name: grew } : { name: grew, count: ">100000" }],
  });
  return { patientId, stayId, identifier, caseId: specimenId, signId: signIds[0] ?? 0 };
}
