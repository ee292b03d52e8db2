import { expect, it } from "vitest";
import { openStore } from "../../../src/store/open-store.ts";
import { sealAudit } from "../../../src/usecases/audit/seal-audit.ts";
import { verifyAudit } from "../../../src/usecases/audit/verify-audit.ts";
import { keepSealing } from "../../../src/usecases/jobs/keep-sealing.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { rawQuery } from "../../databases/raw-query.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("sealing", (fresh, kind) => {
  const shared = sharedStore(fresh);
  const keeping = (errors: unknown[]) => ({
    clock: () => utc("2024-03-06 12:00"),
    onError: (error: unknown) => void errors.push(error),
  });

  it("chains every entry once, in the order of ids, and begins where it left off", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const first = await sealAudit(shared.store);
    expect(first).toBeGreaterThan(3);
    expect(await sealAudit(shared.store)).toBe(0);
    await bay.admit("P2", "2024-03-06 10:00");
    expect(await sealAudit(shared.store)).toBe(1);
    const rows = await rawQuery(shared.url, "SELECT id, seal_number FROM audit_entry ORDER BY seal_number");
    expect(rows.map((row) => Number(row.seal_number))).toEqual(rows.map((_, i) => i + 1));
    expect(rows.map((row) => String(row.id))).toEqual(rows.map((row) => String(row.id)).toSorted());
    expect(await verifyAudit(shared.store)).toMatchObject({ whole: true, waiting: 0, sealed: first + 1 });
  });

  it("never seals twice nor anew, also when several seal at once", async () => {
    const bay = await alderBay(shared.store);
    const other = kind === "sqlite" ? shared.store : openStore(shared.url);
    const heads: string[] = [];
    for (let round = 0; round < 5; round++) {
      const writers = Array.from({ length: 8 }, (_, i) => bay.admit(`T${round}-${i}`, "2024-03-06 10:00"));
      const sealers = [shared.store, other, shared.store, other].map((store) => sealAudit(store));
      await Promise.all([...writers, ...sealers]);
      const [head] = await rawQuery(
        shared.url,
        "SELECT seal_number, seal_hash FROM audit_entry WHERE seal_number IS NOT NULL ORDER BY seal_number DESC LIMIT 1",
      );
      heads.push(`${head?.seal_number}:${head?.seal_hash}`);
    }
    await sealAudit(shared.store);
    if (kind === "postgresql") await other.close();
    for (const head of heads) {
      const [number, hash = ""] = head.split(":");
      const known = { number: Number(number), hash };
      expect(await verifyAudit(shared.store, known)).toMatchObject({ whole: true, waiting: 0 });
    }
  });

  it("uses up no ids, however often it looks", async () => {
    const drawn = () => shared.store.tx(async (tx) => tx.newId());
    const before = await drawn();
    for (let look = 0; look < 200; look++) await sealAudit(shared.store);
    // What one transaction asks for when it says nothing.
    expect((await drawn()) - before).toBe(16);
  });

  it("goes on by itself while many write, and is over with everything sealed", async () => {
    const bay = await alderBay(shared.store);
    const errors: unknown[] = [];
    const sealer = keepSealing(shared.store, keeping(errors));
    const writers = Array.from({ length: 20 }, (_, i) => bay.admit(`Q${i}`, "2024-03-06 10:00"));
    await Promise.all(writers);
    await sealer.stop();
    expect(errors).toEqual([]);
    expect(await verifyAudit(shared.store)).toMatchObject({ whole: true, waiting: 0, firstFault: null });
  });

  it("is left to one of several that keep at it, and taken over when that one stops", async () => {
    const bay = await alderBay(shared.store);
    // SQLite has one process, and all of it is this store.
    const other = kind === "sqlite" ? shared.store : openStore(shared.url);
    const errors: unknown[] = [];
    const [one, two] = [shared.store, other].map((store) => keepSealing(store, keeping(errors)));
    await Promise.all(Array.from({ length: 10 }, (_, i) => bay.admit(`R${i}`, "2024-03-06 10:00")));
    await one?.stop();
    await bay.admit("R99", "2024-03-06 10:00");
    await two?.stop();
    if (kind === "postgresql") await other.close();
    expect(errors).toEqual([]);
    const after = keepSealing(shared.store, keeping(errors));
    await after.stop();
    expect(await verifyAudit(shared.store)).toMatchObject({ whole: true, waiting: 0 });
  });

  it("tells what goes wrong, and tries again", async () => {
    const errors: unknown[] = [];
    let failing = true;
    const broken = { ...shared.store };
    const tx: typeof shared.store.tx = (work, options) =>
      failing ? Promise.reject(new Error("the disk is gone")) : shared.store.tx(work, options);
    const onError = (error: unknown) => {
      errors.push(error);
      failing = false;
    };
    const sealer = keepSealing({ ...broken, tx }, { ...keeping(errors), onError });
    await expect.poll(() => errors.length).toBe(1);
    await sealer.stop();
    expect(await verifyAudit(shared.store)).toMatchObject({ whole: true, waiting: 0 });
  });
});
