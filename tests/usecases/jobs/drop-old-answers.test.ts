import { expect, it } from "vitest";
import { keepAnswer, takeKey } from "../../../src/store/idempotency.ts";
import { dropOldAnswers } from "../../../src/usecases/jobs/drop-old-answers.ts";
import { keepSealing } from "../../../src/usecases/jobs/keep-sealing.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("answers of creations", (fresh) => {
  const shared = sharedStore(fresh);
  /** Answers to creations that were made at these times; tells which of them are there. */
  const answered = async (...times: string[]) => {
    const { personId } = await alderBay(shared.store);
    for (const time of times)
      await shared.store.tx(async (tx) => {
        await takeKey(tx, { personId, key: time }, { requestHash: "a", now: utc(time) });
        await keepAnswer(tx, { personId, key: time }, "{}");
      });
    return () =>
      shared.store.read(async (read) => {
        const rows = await read.db.idempotencyKey.findMany({ where: { personId }, orderBy: { createdAt: "asc" } });
        return rows.map(({ key }) => key);
      });
  };

  it("are dropped when they are older than 30 days", async () => {
    const left = await answered("2024-03-01 08:00", "2024-03-01 08:01");
    await dropOldAnswers(shared.store, utc("2024-03-31 08:00"));
    expect(await left()).toEqual(["2024-03-01 08:00", "2024-03-01 08:01"]);
    expect(await dropOldAnswers(shared.store, utc("2024-03-31 08:01"))).toBe(1);
    expect(await left()).toEqual(["2024-03-01 08:01"]);
  });

  it("are dropped beside the sealing: at once, and when an hour has passed", async () => {
    const left = await answered("2024-04-01 08:00", "2024-04-01 08:30", "2024-04-01 09:30");
    let now = utc("2024-05-01 08:10");
    const errors: unknown[] = [];
    const sealer = keepSealing(shared.store, { clock: () => now, onError: (error) => errors.push(error) });
    await expect.poll(left).toEqual(["2024-04-01 08:30", "2024-04-01 09:30"]);
    now = utc("2024-05-01 09:09");
    // A round that began before is over when the next one has sealed.
    for (let rounds = 0; rounds < 2; rounds++) await untilSealed();
    expect(await left()).toEqual(["2024-04-01 08:30", "2024-04-01 09:30"]);
    now = utc("2024-05-01 09:10");
    await expect.poll(left, { timeout: 5_000 }).toEqual(["2024-04-01 09:30"]);
    await sealer.stop();
    expect(errors).toEqual([]);
  });

  /** Until the loop has been round: an entry that waited is sealed. */
  async function untilSealed(): Promise<void> {
    const bay = await alderBay(shared.store);
    await bay.admit("P1", "2024-03-06 10:00");
    const waiting = () =>
      shared.store.read((read) =>
        read.db.auditEntry.count({ where: { facilityId: bay.facilityId, sealNumber: null } }),
      );
    await expect.poll(waiting, { timeout: 5_000 }).toBe(0);
  }
});
