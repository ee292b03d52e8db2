import { expect, it } from "vitest";
import { type PatientKey, patientIdOf } from "../../src/store/patient-of-entry.ts";
import { recordFinding } from "../../src/usecases/cultures/record-finding.ts";
import { recordSigns } from "../../src/usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../../src/usecases/cultures/record-specimen.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { writeNote } from "../../src/usecases/record/write-note.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const day = utc("2024-03-02 00:00") / 86_400_000;

onEachDatabase("an entry", (fresh) => {
  const shared = sharedStore(fresh);
  const ownerOf = (key: PatientKey) => shared.store.read((read) => patientIdOf(read, key));

  it("leads to its patient, of every kind, and to nobody else's", async () => {
    const bay = await alderBay(shared.store);
    await bay.admit("P1", "2024-03-01 08:00");
    const { patientId, stayId, wardStayId } = await bay.admit("P2", "2024-03-01 10:00");
    const act = bay.at("2024-03-02 12:00");
    const inserted = { kind: "indwelling-urethral", insertedAt: utc("2024-03-01 11:00") } as const;
    const { catheterId } = await insertCatheter(act, { ...inserted, stayId, inPlaceOnArrival: false });
    const { noteId } = await writeNote(act, { catheterId, kind: "confirmation", at: utc("2024-03-02 09:00") });
    const urine = { kind: "urine", method: "culture", status: "pending" } as const;
    const collectedAt = utc("2024-03-02 08:00");
    const { specimenId } = await recordSpecimen(act, { patientId, ...urine, collectedAt, organisms: [] });
    const signs = [{ sign: "dysuria", finding: "absent" }] as const;
    const [signId = 0] = (await recordSigns(act, { patientId, day, signs })).signIds;
    const { findingId } = await recordFinding(act, {
      patientId,
      finding: "leukocyte-esterase-or-nitrite",
      day,
      present: true,
    });

    const keys = { patientId, stayId, wardStayId, catheterId, noteId, specimenId, signId, findingId };
    for (const [name, id] of Object.entries(keys)) {
      expect([name, await ownerOf({ [name]: id } as unknown as PatientKey)]).toEqual([name, patientId]);
      if (name !== "patientId")
        expect([name, await ownerOf({ [name]: 987_654_321 } as unknown as PatientKey)]).toEqual([name, null]);
    }
    expect(await ownerOf({ caseId: specimenId })).toBe(patientId);
    expect(await ownerOf({ caseId: findingId })).toBe(patientId);
  });
});
