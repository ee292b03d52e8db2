import { expect, it } from "vitest";
import type { AbsenceKind } from "../../../shared/vocabulary.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../../src/usecases/record/record-absence.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("time off the wards", (fresh) => {
  const shared = sharedStore(fresh);

  // Which absence keeps the ward day is a decision of ours: a procedure keeps the bed, leave and unknown time do not.
  it.each<[AbsenceKind | null, string[]]>([
    ["procedure", ["2024-03-02 A", "2024-03-03 A", "2024-03-04 A", "2024-03-05 A"]],
    ["leave", ["2024-03-02 A", "2024-03-05 A"]],
    [null, ["2024-03-02 A", "2024-03-05 A"]],
  ])("of the kind %s is counted so", async (kind, days) => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const act = bay.at("2024-03-06 10:00");
    const [leftAt, backAt] = [utc("2024-03-02 12:00"), utc("2024-03-04 12:00")];
    const { wardStayId } = await recordAbsence(act, { stayId, leftAt, kind, backAt });
    expect(await ledgerOf(shared.store, patientId)).toEqual(days);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "record-absence",
        patientIds: [patientId],
        details: { stayId, kind, wardStayId },
      },
    ]);
  });

  it("without a return lasts until the discharge", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const away = { stayId, leftAt: utc("2024-03-02 12:00"), kind: "leave" } as const;
    expect(await recordAbsence(bay.at("2024-03-06 10:00"), away)).toEqual({ wardStayId: null });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A"]);
  });

  it("is refused while away, when the return is wrong, in the future, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId, wardStayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const moved = { stayId, movedAt: utc("2024-03-03 10:00"), wardId: bay.b };
    const act = bay.at("2024-03-06 10:00");
    const move = await movePatient(act, moved);
    const away = (left: string, back: string | null, by = act) =>
      refusalOf(shared.store, () =>
        recordAbsence(by, { stayId, leftAt: utc(left), kind: "leave", backAt: back === null ? null : utc(back) }),
      );
    expect(await away("2024-03-02 10:00", "2024-03-03 11:00")).toMatchObject({
      code: "move-overlaps",
      other: `ward stay ${wardStayId}`,
    });
    expect(await away("2024-03-02 10:00", "2024-03-02 09:00")).toMatchObject({ code: "end-before-start" });
    expect(await away("2024-03-06 10:06", null)).toMatchObject({ code: "in-the-future", pointer: "/leftAt" });
    expect(await away("2024-03-02 10:00", "2024-03-06 10:06")).toMatchObject({
      code: "in-the-future",
      pointer: "/backAt",
    });
    expect(await away("2024-03-02 10:00", null, other.at("2024-03-06 10:00"))).toMatchObject({ code: "not-found" });
    await recordAbsence(act, { stayId, leftAt: utc("2024-03-04 10:00"), kind: "leave" });
    expect(await away("2024-03-04 12:00", null)).toMatchObject({
      code: "not-on-a-ward",
      other: `ward stay ${move.wardStayId}`,
    });
  });
});
