import { expect, it } from "vitest";
import { cancelMove } from "../../../src/usecases/record/cancel-move.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("cancelling a move", (fresh) => {
  const shared = sharedStore(fresh);

  /** A stay of three days that was moved from A to B in the middle. */
  async function moved(bay: AlderBay) {
    const admitted = await bay.stay("P1", "2024-03-01 10:00", "2024-03-04 10:00");
    const order = { stayId: admitted.stayId, movedAt: utc("2024-03-02 12:00"), wardId: bay.b };
    return { ...admitted, moved: await movePatient(bay.at("2024-03-04 11:00"), order) };
  }

  it("gives the days back to the ward on which the patient stayed, and keeps what was said", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, moved: move } = await moved(bay);
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 B", "2024-03-04 B"]);
    const act = bay.at("2024-03-05 10:00");
    await cancelMove(act, { wardStayId: move.wardStayId, reason: "bed was taken" });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A", "2024-03-04 A"]);
    const kept = await versionsOf(shared.store, "ward-stay", move.wardStayId);
    expect(kept).toMatchObject([{ version: 1, reason: "bed was taken", body: { wardId: bay.b, voidReason: null } }]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([
      {
        action: "cancel-move",
        patientIds: [patientId],
        details: { wardStayId: move.wardStayId, reason: "bed was taken" },
      },
    ]);
  });

  it("is refused for the ward stay with which the stay began, for a cancelled one, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { wardStayId, moved: move } = await moved(bay);
    const act = bay.at("2024-03-05 10:00");
    const cancel =
      (id: number, by = act) =>
      () =>
        cancelMove(by, { wardStayId: id, reason: "wrong" });
    expect(await refusalOf(shared.store, cancel(wardStayId))).toMatchObject({
      code: "first-ward-stay",
      other: `ward stay ${wardStayId}`,
    });
    expect(await refusalOf(shared.store, cancel(move.wardStayId, other.at("2024-03-05 10:00")))).toMatchObject({
      code: "not-found",
    });
    await cancel(move.wardStayId)();
    expect(await refusalOf(shared.store, cancel(move.wardStayId))).toMatchObject({
      code: "entry-voided",
      other: `ward stay ${move.wardStayId}`,
    });
  });
});
