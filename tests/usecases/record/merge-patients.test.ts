import { expect, it } from "vitest";
import { mergePatients, unmergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { voidStay } from "../../../src/usecases/record/void-entry.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";

const later = "2024-03-20 10:00";
const reason = "not the same person";

onEachDatabase("merging two records of one person", (fresh) => {
  const shared = sharedStore(fresh);

  /** Three patients with a stay each, one after another; the first has a catheter on the last day. */
  async function three(bay: AlderBay): Promise<{ one: number; two: number; three: number }> {
    const first = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    await inserted(bay, "2024-03-03 11:00", first.stayId, "2024-03-02 11:00");
    const second = await bay.stay("P2", "2024-03-05 10:00", "2024-03-06 10:00", { wardId: bay.b });
    const third = await bay.stay("P3", "2024-03-08 10:00", "2024-03-09 10:00");
    return { one: first.patientId, two: second.patientId, three: third.patientId };
  }

  const days = {
    one: ["2024-03-02 A", "2024-03-03 A with catheter"],
    two: ["2024-03-06 B"],
    three: ["2024-03-09 A"],
  };
  const ledgers = async ({ one, two, three }: { one: number; two: number; three: number }) => ({
    one: await ledgerOf(shared.store, one),
    two: await ledgerOf(shared.store, two),
    three: await ledgerOf(shared.store, three),
  });
  const merge = (bay: AlderBay, fromId: number, intoId: number, time = later) =>
    mergePatients(bay.at(time), { fromId, intoId });

  it("moves its days to the survivor, and undoing it gives them back exactly", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    const act = bay.at(later);
    const { mergeId } = await merge(bay, ids.one, ids.two);
    expect(await ledgers(ids)).toEqual({ one: [], two: [...days.one, ...days.two], three: days.three });
    const undo = bay.at("2024-03-21 10:00");
    await unmergePatients(undo, { mergeId, reason });
    expect(await ledgers(ids)).toEqual(days);
    const both = { personId: bay.personId, patientIds: [ids.one, ids.two] };
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      { at: act.now, action: "merge-patients", ...both, details: { mergeId } },
      { at: undo.now, action: "unmerge-patients", ...both, details: { mergeId, reason } },
    ]);
  });

  it("into an earlier record counts the same, and what is recorded between is given back to whom it was recorded for", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    const { mergeId } = await merge(bay, ids.three, ids.one);
    expect(await ledgers(ids)).toEqual({ one: [...days.one, ...days.three], two: days.two, three: [] });
    await bay.stay("P3", "2024-03-20 11:00", "2024-03-21 10:00");
    await bay.stay("P1", "2024-03-21 11:00", "2024-03-22 10:00");
    await unmergePatients(bay.at("2024-03-23 10:00"), { mergeId, reason });
    expect(await ledgers(ids)).toEqual({
      one: [...days.one, "2024-03-22 A"],
      two: days.two,
      three: [...days.three, "2024-03-21 A"],
    });
  });

  it("in a chain moves all days to its end; undoing the later merge leaves the earlier one standing", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    const first = await merge(bay, ids.one, ids.two);
    const second = await merge(bay, ids.two, ids.three, "2024-03-20 11:00");
    expect(await ledgers(ids)).toEqual({ one: [], two: [], three: [...days.one, ...days.two, ...days.three] });
    await unmergePatients(bay.at("2024-03-21 10:00"), { mergeId: second.mergeId, reason });
    expect(await ledgers(ids)).toEqual({ one: [], two: [...days.one, ...days.two], three: days.three });
    await unmergePatients(bay.at("2024-03-21 11:00"), { mergeId: first.mergeId, reason });
    expect(await ledgers(ids)).toEqual(days);
  });

  it("in a chain can be undone at its beginning first", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    const first = await merge(bay, ids.one, ids.two);
    const second = await merge(bay, ids.two, ids.three, "2024-03-20 11:00");
    await unmergePatients(bay.at("2024-03-21 10:00"), { mergeId: first.mergeId, reason });
    expect(await ledgers(ids)).toEqual({ one: days.one, two: [], three: [...days.two, ...days.three] });
    await unmergePatients(bay.at("2024-03-21 11:00"), { mergeId: second.mergeId, reason });
    expect(await ledgers(ids)).toEqual(days);
    await merge(bay, ids.three, ids.one, "2024-03-22 10:00");
    expect(await ledgers(ids)).toEqual({ one: [...days.one, ...days.three], two: days.two, three: [] });
  });

  it("is refused for a record that was merged already, by either side, and names the survivor", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    await merge(bay, ids.one, ids.two);
    const already = { code: "already-merged", pointer: "", other: `patient ${ids.two}` };
    expect(await refusalOf(shared.store, () => merge(bay, ids.one, ids.three))).toEqual(already);
    expect(await refusalOf(shared.store, () => merge(bay, ids.three, ids.one))).toEqual(already);
    expect(await refusalOf(shared.store, () => merge(bay, ids.one, ids.two))).toEqual(already);
  });

  it("is refused while both claim the person at one time, and passes once one of the stays is voided", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    const overlapping = await bay.stay("P4", "2024-03-03 09:00", "2024-03-04 10:00");
    const other = { code: "stay-overlaps", other: `stay ${overlapping.stayId}` };
    expect(await refusalOf(shared.store, () => merge(bay, ids.one, overlapping.patientId))).toMatchObject(other);
    await voidStay(bay.at(later), { stayId: overlapping.stayId, reason: "twice" });
    await merge(bay, ids.one, overlapping.patientId);
    expect(await ledgerOf(shared.store, overlapping.patientId)).toEqual(days.one);
  });

  it("is refused with itself, with a record of another facility, and when it does not stand", async () => {
    const bay = await alderBay(shared.store);
    const elsewhere = await alderBay(shared.store);
    const ids = await three(bay);
    const stranger = await elsewhere.admit("P1", "2024-03-01 10:00");
    expect(await refusalOf(shared.store, () => merge(bay, ids.one, ids.one))).toEqual({
      code: "same-patient",
      pointer: "/fromId",
    });
    for (const [from, into] of [
      [ids.one, stranger.patientId],
      [stranger.patientId, ids.one],
    ] as const)
      expect(await refusalOf(shared.store, () => merge(bay, from, into))).toMatchObject({ code: "not-found" });
    const { mergeId } = await merge(bay, ids.one, ids.two);
    const undo = (by: AlderBay) => unmergePatients(by.at("2024-03-21 10:00"), { mergeId, reason });
    expect(await refusalOf(shared.store, () => undo(elsewhere))).toMatchObject({ code: "not-found" });
    await undo(bay);
    expect(await refusalOf(shared.store, () => undo(bay))).toMatchObject({ code: "not-found" });
  });

  it("in both directions at once lets one of the two through", async () => {
    const bay = await alderBay(shared.store);
    const ids = await three(bay);
    const both = await Promise.allSettled([merge(bay, ids.one, ids.two), merge(bay, ids.two, ids.one)]);
    const refused = both.flatMap((one) => (one.status === "rejected" ? [one.reason] : []));
    expect(refused).toMatchObject([{ code: "already-merged" }]);
    const { one, two } = await ledgers(ids);
    expect([one, two].toSorted((a, b) => a.length - b.length)).toEqual([[], [...days.one, ...days.two]]);
  });
});
