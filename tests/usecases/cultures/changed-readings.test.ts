import { expect, it } from "vitest";
import { determinationsOfCase } from "../../../src/store/determinations.ts";
import { committedMigrations } from "../../../src/store/migrate.ts";
import { determineByNow } from "../../../src/usecases/cultures/determine-by-now.ts";
import { recordSigns } from "../../../src/usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../../../src/usecases/cultures/record-specimen.ts";
import { admitPatient } from "../../../src/usecases/record/admit-patient.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { rawQuery } from "../../databases/raw-query.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const day = (text: string) => utc(`${text} 00:00`) / 86_400_000;
const upgraded = "0017_changed_readings";

onEachDatabase("a changed reading of an edition", (fresh, kind) => {
  const shared = sharedStore(fresh);

  it("begins after the last signed month: signed months keep their determinations, later ones are determined again", async () => {
    const bay = await alderBay(shared.store);
    const { facilityId: id, personId: signedBy } = bay;
    // As before the change: no month has it.
    await shared.store.tx((tx) =>
      tx.db.facility.update({ where: { id }, data: { earlierReadingsThrough: "2024-12" } }),
    );
    const patient = { identifier: "P1", birthDay: day("2022-12-10") };
    const stay = { number: "S1", admittedAt: utc("2024-02-20 08:00"), wardId: bay.a };
    const { patientId } = await admitPatient(bay.at("2024-02-20 08:00"), { patient, ...stay });
    const cultureOn = async (date: string) => {
      const specimen = { patientId, kind: "urine", method: "culture", status: "final" } as const;
      const { specimenId } = await recordSpecimen(bay.at("2024-05-10 12:00"), {
        ...{ ...specimen, collectedAt: utc(`${date} 08:00`) },
        organisms: [{ name: "Escherichia coli", count: ">100000" }],
      });
      const signs = [{ sign: "vomiting", finding: "present" }] as const;
      await recordSigns(bay.at("2024-05-10 12:00"), { patientId, day: day(date), signs });
      return specimenId;
    };
    const [signed, later] = [await cultureOn("2024-03-10"), await cultureOn("2024-04-20")];
    const last = async (caseId: number) =>
      (await shared.store.read((read) => determinationsOfCase(read, id, caseId))).at(-1);
    const before = await last(signed);
    expect([before?.outcome, (await last(later))?.outcome]).toEqual(["event", "event"]);
    const month = { month: "2024-03", number: 1, text: "{}", digest: "0", seen: "0", role: "prevention" };
    await shared.store.tx((tx) => {
      const data = { id: tx.newId(), facilityId: id, ...month, signedAt: new Date(utc("2024-04-03 09:00")), signedBy };
      return tx.db.signedMonth.create({ data });
    });
    const { sql = "" } = committedMigrations(kind).find(({ name }) => name === upgraded) ?? {};
    const updates = sql.split(";").filter((one) => one.includes("UPDATE"));
    expect(updates).toHaveLength(2);
    for (const one of updates) await rawQuery(shared.url, one);
    await determineByNow(bay.at("2024-05-10 13:00"));
    expect(await last(signed)).toMatchObject({
      number: before?.number,
      outcome: "event",
      knownThrough: day("2024-05-10"),
    });
    // No event by vomiting alone any more; other signs were not looked for.
    expect(await last(later)).toMatchObject({ outcome: "cannot-tell", cause: "determine-again" });
  });
});
