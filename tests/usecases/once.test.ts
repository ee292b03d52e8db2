import { expect, it } from "vitest";
import type { Act } from "../../src/usecases/act.ts";
import { once } from "../../src/usecases/once.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { everything } from "../databases/read-back.ts";
import { faultsOf, refusalOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("a creation", (fresh) => {
  const shared = sharedStore(fresh);
  let keys = 0;
  const creation = (digest = "one") => ({ key: `once-${++keys}`, digest });
  const admission = (wardId: number, identifier: string) => (act: Act) =>
    admitPatient(act, {
      ...{ patient: { identifier }, number: identifier, wardId, admittedAt: utc("2024-03-01 10:00") },
    });

  it("that is sent again with the same content is done once, and answered as the first time", async () => {
    const bay = await alderBay(shared.store);
    const [sent, work] = [creation(), admission(bay.a, "P1")];
    const first = await once(bay.at("2024-03-01 10:00"), sent, work);
    const before = await everything(shared.store);
    let asked = 0;
    const again = await once(bay.at("2024-03-02 10:00"), sent, (act) => {
      asked += 1;
      return work(act);
    });
    expect([again, asked]).toEqual([first, 1]);
    expect(await everything(shared.store)).toEqual(before);
  });

  it("that is sent twice at once is done once", async () => {
    const bay = await alderBay(shared.store);
    const sent = creation();
    const act = bay.at("2024-03-01 10:00");
    const answers = await Promise.all(Array.from({ length: 5 }, () => once(act, sent, admission(bay.a, "P1"))));
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    const stays = await shared.store.read((read) => read.db.stay.count({ where: { facilityId: bay.facilityId } }));
    expect(stays).toBe(1);
  });

  it("with the key of another one is refused", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at("2024-03-01 10:00");
    const { key } = creation();
    await once(act, { key, digest: "one" }, admission(bay.a, "P1"));
    const other = () => once(act, { key, digest: "two" }, admission(bay.a, "P2"));
    expect(await refusalOf(shared.store, other)).toMatchObject({ code: "idempotency-key-reused" });
  });

  it("with the same key as another person's is done", async () => {
    const [bay, other] = [await alderBay(shared.store), await alderBay(shared.store)];
    const sent = creation();
    const one = await once(bay.at("2024-03-01 10:00"), sent, admission(bay.a, "P1"));
    const two = await once(other.at("2024-03-01 10:00"), sent, admission(other.a, "P1"));
    expect(two.stayId).not.toBe(one.stayId);
  });

  it("that was refused leaves its key, and can be sent again when the cause is gone", async () => {
    const bay = await alderBay(shared.store);
    const sent = creation();
    const early = () => once(bay.at("2024-02-01 10:00"), sent, admission(bay.a, "P1"));
    expect(await refusalOf(shared.store, early)).toMatchObject({ code: "in-the-future" });
    await bay.admit("P2", "2024-03-01 09:00", { number: "P1" });
    const taken = () => once(bay.at("2024-03-01 10:00"), sent, admission(bay.a, "P1"));
    expect(await refusalOf(shared.store, taken)).toMatchObject({ code: "stay-number-taken" });
    const other = { ...sent, digest: "mended" };
    const work = (act: Act) =>
      admitPatient(act, {
        ...{ patient: { identifier: "P1" }, number: "P1-b", wardId: bay.a, admittedAt: utc("2024-03-01 10:00") },
      });
    expect((await once(bay.at("2024-03-01 10:00"), other, work)).version).toBe(1);
    expect(await faultsOf(taken)).toMatchObject([{ code: "idempotency-key-reused" }]);
  });

  it("of two transactions is a bug: the second could be lost without the first", async () => {
    const bay = await alderBay(shared.store);
    const twice = async (act: Act) => {
      await act.store.tx(async () => ({}));
      return act.store.tx(async () => ({}));
    };
    await expect(once(bay.at("2024-03-01 10:00"), creation(), twice)).rejects.toThrow("more than one transaction");
  });
});
