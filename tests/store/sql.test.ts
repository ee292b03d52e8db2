import { expect, it } from "vitest";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

onEachDatabase("statements of our own", (fresh, kind) => {
  const shared = sharedStore(fresh);
  const put = "INSERT INTO id_block (name, next) VALUES ($1, $2)";
  const named = "SELECT name, next FROM id_block WHERE name = $1";

  it("run in the transaction, beside those of Prisma, and are gone with it", async () => {
    const work = shared.store.tx(async (tx) => {
      expect(await tx.sql.run(put, "lost", 7)).toBe(1);
      expect(await tx.db.idBlock.count({ where: { name: "lost" } })).toBe(1);
      await tx.db.idBlock.update({ where: { name: "lost" }, data: { next: 8 } });
      expect(await tx.sql.rows(named, "lost")).toEqual([{ name: "lost", next: 8 }]);
      throw new Error("gives up");
    });
    await expect(work).rejects.toThrow("gives up");
    expect(await shared.store.read((read) => read.sql.rows(named, "lost"))).toEqual([]);
  });

  it("read from the snapshot that is open", async () => {
    const seen = await shared.store.read(async (read) => {
      const before = await read.sql.rows(named, "kept");
      await shared.store.tx((tx) => tx.sql.run(put, "kept", 1));
      return [before, await read.sql.rows(named, "kept")];
    });
    expect(seen).toEqual([[], []]);
    expect(await shared.store.read((read) => read.sql.rows(named, "kept"))).toEqual([{ name: "kept", next: 1 }]);
  });

  it("cannot write in a snapshot", async () => {
    const write = shared.store.read((read) => read.sql.run(put, "read", 1));
    // A client of PostgreSQL may write in a snapshot; no use case does.
    if (kind === "sqlite") await expect(write).rejects.toMatchObject({ code: "database-not-writable" });
    else expect(await write).toBe(1);
  });

  it("let Prisma begin what it does in several statements, all or nothing", async () => {
    const write = shared.store.tx(async ({ db }) => {
      const facility = { id: 1, name: "Alder Bay", zone: "UTC", recordedAt: new Date(0) };
      await db.facility.create({ data: facility });
      const roles = {
        create: [
          { facilityId: 1, role: "bedside" },
          { facilityId: 99, role: "bedside" },
        ],
      };
      const person = { id: 2, name: "Kit", recordedAt: new Date(0), roles };
      await expect(db.person.create({ data: person })).rejects.toMatchObject({ code: "P2003" });
    });
    await write;
    // On PostgreSQL a failed statement takes the whole transaction along.
    expect(await shared.store.read(({ db }) => db.facility.count())).toBe(kind === "sqlite" ? 1 : 0);
    expect(await shared.store.read(({ db }) => db.person.count())).toBe(0);
  });
});
