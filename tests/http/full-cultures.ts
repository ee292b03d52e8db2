import { endpoints } from "../../shared/api/index.ts";
import type { Day } from "../../shared/day.ts";
import type { Desk } from "./desk.ts";

const { chooseLaboratoryWords, recordSigns, recordSpecimen } = endpoints;

/**
 * Cultures and signs of a patient who has had a catheter since 17 November 2026: a urine culture of 20 November with E.
 * coli and fever on its day, a blood culture without growth, and tenderness that somebody looked for in vain. Answers
 * with the number of the case.
 */
export async function fillCultures(desk: Desk, patientId: number): Promise<number> {
  const none = [{ name: "No growth" }];
  const final = { patientId, method: "culture", status: "final" } as const;
  const { specimenId } = await desk.ask(recordSpecimen, {
    ...{ ...final, kind: "urine", collectedAt: "2026-11-20T07:30", number: "L-2041" },
    organisms: [{ name: "Escherichia coli", count: ">100000" }],
  });
  await desk.ask(recordSpecimen, { ...final, kind: "blood", collectedAt: "2026-11-20T07:40", organisms: none });
  // Wordings that wait for a choice, and one that has it.
  const odd = [{ name: "Odd rod", count: "plenty" }, { name: "Escherchia coli" }];
  await desk.ask(recordSpecimen, { ...final, kind: "blood", collectedAt: "2026-11-20T07:50", organisms: odd });
  await desk.ask(chooseLaboratoryWords, { words: [{ column: "count", wording: "plenty", choice: "at-least-100000" }] });
  await desk.ask(recordSigns, {
    ...{ patientId, day: "2026-11-20" as Day },
    signs: [
      { sign: "temperature", finding: "present", temperature: "38.6 °C", time: "07:00" },
      { sign: "suprapubic-tenderness", finding: "absent" },
      { sign: "costovertebral-pain", finding: "present", otherCause: true },
    ],
  });
  return specimenId;
}
