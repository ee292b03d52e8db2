import { expect, it } from "vitest";
import type { Month } from "../../../shared/day.ts";
import { dayMs } from "../../../src/domain/days/day-number.ts";
import { readAgreement } from "../../../src/usecases/months/read-agreement.ts";
import { recordDailyCount } from "../../../src/usecases/months/record-daily-count.ts";
import { admitPatient } from "../../../src/usecases/record/admit-patient.ts";
import { dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { openHospital } from "../../databases/hospital.ts";

const now = Date.UTC(2026, 10, 25, 12);
const day = (text: string) => Date.parse(text) / dayMs;

onEachDatabase("agreement of the electronic with the manual count", (fresh) => {
  it("is judged by ward over three months, on the days that have both counts", async () => {
    const database = await fresh();
    const hospital = await openHospital(database.url, { now, zone: "UTC" });
    const wardId = await hospital.addWard("3E");
    const act = hospital.at(now);
    // One patient from 1 August to 31 October: present at the census of 2 August to 31 October.
    const { stayId } = await admitPatient(act, {
      patient: { identifier: "P1" },
      number: "S1",
      admittedAt: Date.parse("2026-08-01T08:00Z"),
      wardId,
    });
    await dischargePatient(act, { stayId, dischargedAt: Date.parse("2026-10-31T08:00Z") });
    for (let d = day("2026-08-02"); d <= day("2026-10-31"); d++)
      await recordDailyCount(act, { wardId, day: d, patients: 1, catheters: 0 });
    const month = "2026-10" as Month;
    const agreed = await readAgreement(act, { wardId, month });
    expect(agreed.patientDays.months.map((m) => [m.month, m.manual, m.electronic, m.outcome])).toEqual([
      ["2026-08", 30, 30, "agrees"],
      ["2026-09", 30, 30, "agrees"],
      ["2026-10", 31, 31, "agrees"],
    ]);
    expect(agreed.patientDays.verdict).toBe("accepted");
    // Nobody had a catheter, so catheter-days cannot be judged and the whole is not accepted.
    expect(agreed.verdict).toBe("too few to judge");
    for (let d = day("2026-10-01"); d <= day("2026-10-03"); d++)
      await recordDailyCount(act, { wardId, day: d, patients: 2, catheters: 0, reason: "counted again" });
    const differs = await readAgreement(act, { wardId, month });
    expect(differs.patientDays.months[2]).toMatchObject({ manual: 34, electronic: 31, outcome: "differs" });
    expect(differs.verdict).toBe("not yet");
    await hospital.store.close();
    await database.drop();
  });
});
