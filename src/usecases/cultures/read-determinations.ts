import type { readDeterminations as endpoint } from "../../../shared/api/determinations.ts";
import { determinationCaution } from "../../../shared/culture-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { determineInForce } from "../../domain/cultures/determine-in-force.ts";
import { surveillanceOf } from "../../domain/cultures/surveillance-of.ts";
import { determinationWithCodes } from "../../domain/cultures/ward-codes.ts";
import { dayText } from "../../domain/days/day-number.ts";
import type { EditionFamily } from "../../domain/editions/index.ts";
import { cultureRecords } from "../../store/culture-records.ts";
import { findPatient } from "../../store/patients.ts";
import { wardCodes } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";
import { determinationAnswer } from "./determination-answer.ts";
import { loadDeterminingRules } from "./determining-rules.ts";

/**
 * What the editions in force say of a patient's urine cultures, worked out from the whole record as it stands, with
 * every step; the view is recorded. Refuses `not-found`.
 */
export function readDeterminations(
  act: Act,
  { patientId, family }: { patientId: number; family: EditionFamily },
): Promise<OutputOf<typeof endpoint>> {
  const { facilityId } = act.actor;
  return view(act, async (read, seen) => {
    const { survivorId } = await findPatient(read, facilityId, { patientId });
    const rules = await loadDeterminingRules(read, facilityId);
    const codes = await wardCodes(read, facilityId);
    const [record] = await cultureRecords(read, [survivorId]);
    if (!record) throw new Error(`patient ${survivorId} was found and has no record`);
    const knownThrough = rules.zone.dayOf(act.now);
    const determined = determineInForce(surveillanceOf(record, rules, knownThrough), family, rules.readOn);
    const determinations = determined.map((one) => determinationAnswer(determinationWithCodes(one, codes)));
    const patientIds = [patientId, survivorId];
    const details = { patientId, family };
    seen({ action: "view-determinations", patientIds, details });
    const caution = determinationCaution;
    return { patientId: survivorId, caution, knownThrough: dayText(knownThrough), determinations };
  });
}
