import type { readCultures as endpoint } from "../../../shared/api/cultures.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { laboratoryWords } from "../../domain/cultures/laboratory-words.ts";
import { writeAudit } from "../../store/audit.ts";
import { oldVersions } from "../../store/entry-versions.ts";
import { findingsOf } from "../../store/findings.ts";
import { wordsOfFacility } from "../../store/laboratory-words.ts";
import { findPatient } from "../../store/patients.ts";
import { signsOf } from "../../store/signs.ts";
import { specimensOf } from "../../store/specimens.ts";
import { type Act, recording } from "../act.ts";
import { findingAnswer, signAnswer, specimenAnswer } from "./culture-answers.ts";

/**
 * A patient's specimens and signs, with those of records merged into it, and what they said before; the view is
 * recorded. Refuses `not-found`.
 */
export function readCultures(act: Act, { patientId }: { patientId: number }): Promise<OutputOf<typeof endpoint>> {
  return act.store.tx(
    async (tx) => {
      const { survivorId } = await findPatient(tx, act.actor.facilityId, { patientId });
      const specimens = await specimensOf(tx, [survivorId]);
      const words = laboratoryWords(await wordsOfFacility(tx, act.actor.facilityId));
      const signs = await signsOf(tx, [survivorId]);
      const findings = await findingsOf(tx, [survivorId]);
      const corrections = [
        ...(await oldVersions(tx, "specimen", idsOf(specimens))),
        ...(await oldVersions(tx, "sign", idsOf(signs))),
        ...(await oldVersions(tx, "finding", idsOf(findings))),
      ].sort((a, b) => a.replacedAt - b.replacedAt);
      const patientIds = [patientId, survivorId];
      await writeAudit(tx, recording(act), { action: "view-cultures", patientIds, details: { patientId } });
      return {
        patientId: survivorId,
        specimens: specimens.map((one) => specimenAnswer(one, words)),
        signs: signs.map(signAnswer),
        findings: findings.map(findingAnswer),
        corrections,
      };
    },
    { snapshot: true },
  );
}

function idsOf(entries: readonly { readonly id: number }[]): number[] {
  return entries.map(({ id }) => id);
}
