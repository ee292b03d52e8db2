import { beforeAll, expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { determinationsOfCase } from "../../../src/store/determinations.ts";
import { recordSpecimen } from "../../../src/usecases/cultures/record-specimen.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";
import { signMonth } from "../../../src/usecases/months/sign-month.ts";
import { applyLaboratoryWord } from "../../../src/usecases/settings/apply-laboratory-word.ts";
import { chooseLaboratoryWords } from "../../../src/usecases/settings/choose-words.ts";
import { listLaboratoryWords } from "../../../src/usecases/settings/list-words.ts";
import { watchWard } from "../../../src/usecases/settings/watch-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const word = { column: "organism", wording: "Old rod" } as const;
const march = month.parse("2024-03");
const [recorded, chosen, later] = ["2024-03-10 12:00", "2024-04-02 09:00", "2024-04-03 09:00"];

onEachDatabase("a choice for past specimens", (fresh) => {
  const shared = sharedStore(fresh);
  let bay: AlderBay;
  let last: number;
  beforeAll(async () => {
    bay = await alderBay(shared.store);
    last = await withPast();
  }, 120_000);

  /** More patients than one call determines, each with a culture of the wording, on a unit under surveillance; the last culture. */
  async function withPast(): Promise<number> {
    await watchWard(bay.at(recorded), { wardId: bay.a, fromMonth: march, toMonth: null, edition: "us-2024" });
    let caseId = 0;
    for (let i = 0; i < 51; i++) {
      const { patientId } = await bay.admit(`P${i}`, "2024-03-08 08:00");
      const specimen = { patientId, kind: "urine", method: "culture", status: "final" } as const;
      const { specimenId } = await recordSpecimen(bay.at(recorded), {
        ...{ ...specimen, collectedAt: utc("2024-03-10 08:00") },
        organisms: [{ name: "Old rod", count: ">100000" }],
      });
      caseId = specimenId;
    }
    await chooseLaboratoryWords(bay.at(chosen), { words: [{ ...word, choice: "mixed-flora" }] });
    return caseId;
  }

  const kept = async () => (await shared.store.read((read) => determinationsOfCase(read, bay.facilityId, last))).at(-1);
  const pastOf = async () => (await listLaboratoryWords(bay.at(later))).words[0]?.past;
  const unresolved = async () =>
    (await readMonthGaps(bay.at(later), { month: march })).gaps
      .filter(({ kind }) => kind === "cannot-be-determined")
      .map(({ count }) => count);

  it("says how far it is when its page is closed, and whoever reads the month finds the rest determined", async () => {
    expect(await unresolved()).toEqual([51]);
    expect(await pastOf()).toBeNull();
    const first = await applyLaboratoryWord(bay.at(chosen), word);
    expect(first).toMatchObject({ patients: 50, changed: 50, past: { determined: 50, specimens: 51 } });
    expect(await pastOf()).toEqual({ determined: 50, specimens: 51 });
    expect(await kept()).toMatchObject({ outcome: "cannot-tell" });
    expect(await unresolved()).toEqual([]);
    expect(await kept()).toMatchObject({ outcome: "not-usable", state: "closed", cause: "apply-word" });
    expect(await pastOf()).toBeNull();
    const trail = (await auditOf(shared.store, bay.facilityId)).filter(({ action }) => action === "determine-again");
    expect(trail.map(({ details }) => details)).toContainEqual({
      wordId: expect.any(Number),
      ...{ patients: 1, changed: 1 },
    });
  }, 120_000);

  it("goes on where it was, and is determined to its end before a month is signed", async () => {
    await chooseLaboratoryWords(bay.at(later), { words: [{ ...word, choice: "bacterium", replaces: 2 }] });
    expect(await pastOf()).toBeNull();
    await applyLaboratoryWord(bay.at(later), word);
    const rest = await applyLaboratoryWord(bay.at(later), word);
    expect(rest).toEqual({ patients: 1, changed: 1, past: null });
    expect(await applyLaboratoryWord(bay.at(later), word)).toEqual({ patients: 0, changed: 0, past: null });
    await chooseLaboratoryWords(bay.at(later), { words: [{ ...word, choice: "mixed-flora", replaces: 4 }] });
    await applyLaboratoryWord(bay.at(later), word);
    expect(await kept()).toMatchObject({ outcome: "cannot-tell" });
    const signing = signMonth(bay.at(later), { month: march, seen: "0".repeat(64), replaces: 0, reason: null });
    await expect(signing).rejects.toMatchObject({ code: "month-not-ready" });
    expect(await kept()).toMatchObject({ outcome: "not-usable", cause: "apply-word" });
  }, 120_000);
});
