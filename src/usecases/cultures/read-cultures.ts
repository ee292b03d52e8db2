import type { readCultures as endpoint } from "../../../shared/api/cultures.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { laboratoryWords } from "../../domain/cultures/laboratory-words.ts";
import { oldVersions } from "../../store/entry-versions.ts";
import { findingsOf } from "../../store/findings.ts";
import { wordsOfFacility } from "../../store/laboratory-words.ts";
import { findPatient } from "../../store/patients.ts";
import { signsOf } from "../../store/signs.ts";
import { specimensOf } from "../../store/specimens.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";
import { findingAnswer, signAnswer, specimenAnswer } from "./culture-answers.ts";

/**
 * A patient's specimens and signs, with those of records merged into it, and what they said before; the view is
 * recorded. Refuses `not-found`.
 */
export function readCultures(act: Act, { patientId }: { patientId: number }): Promise<OutputOf<typeof endpoint>> {
  return view(act, async (read, seen) => {
    const { survivorId } = await findPatient(read, act.actor.facilityId, { patientId });
    const specimens = await specimensOf(read, [survivorId]);
    const words = laboratoryWords(await wordsOfFacility(read, act.actor.facilityId));
    const signs = await signsOf(read, [survivorId]);
    const findings = await findingsOf(read, [survivorId]);
    const corrections = [
      ...(await oldVersions(read, "specimen", idsOf(specimens))),
      ...(await oldVersions(read, "sign", idsOf(signs))),
      ...(await oldVersions(read, "finding", idsOf(findings))),
    ].sort((a, b) => a.replacedAt - b.replacedAt);
    const patientIds = [patientId, survivorId];
    seen({ action: "view-cultures", patientIds, details: { patientId } });
    return {
      patientId: survivorId,
      specimens: specimens.map((one) => specimenAnswer(one, words)),
      signs: signs.map(signAnswer),
      findings: findings.map(findingAnswer),
      corrections,
    };
  });
}

function idsOf(entries: readonly { readonly id: number }[]): number[] {
  return entries.map(({ id }) => id);
}
