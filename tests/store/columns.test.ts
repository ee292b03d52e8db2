import { expect, it } from "vitest";
import { rowsOf, writtenRows } from "../../src/store/columns.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

const people = {
  table: "person",
  columns: { id: "int", name: "text", active: "bool", recordedAt: "instant" },
} as const;
const wards = { table: "ward", columns: { id: "int", code: "text", openedDay: "int?", voidReason: "text?" } } as const;
const reasons = { table: "ward", columns: { voidReason: "text" } } as const;

onEachDatabase("columns", (fresh) => {
  const shared = sharedStore(fresh);

  it("come as the program has them: numbers, truth, instants in milliseconds, and nothing where nothing is", async () => {
    await shared.store.tx(async ({ db }) => {
      await db.person.create({ data: { id: 1, name: "Robin Vale", recordedAt: new Date(1_764_000_000_123) } });
      await db.facility.create({ data: { id: 2, name: "Alder Bay", zone: "UTC", recordedAt: new Date(0) } });
      const ward = { id: 3, facilityId: 2, code: "3E", recordedAt: new Date(0), recordedBy: 1 };
      await db.ward.create({ data: ward });
    });
    const found = await shared.store.read((read) => rowsOf(read, people, "WHERE id = $1", 1));
    expect(found).toEqual([{ id: 1, name: "Robin Vale", active: true, recordedAt: 1_764_000_000_123 }]);
    const [ward] = await shared.store.read((read) => rowsOf(read, wards, "WHERE id = $1", 3));
    expect(ward).toEqual({ id: 3, code: "3E", openedDay: null, voidReason: null });
  });

  it("are read back from what a statement wrote", async () => {
    const write = "UPDATE person SET name = $1 WHERE id = $2";
    const written = await shared.store.tx((tx) => writtenRows(tx, people, write, "Robin Hale", 1));
    expect(written.map(({ name }) => name)).toEqual(["Robin Hale"]);
  });

  it("are a fault of the program where one is empty that cannot be", async () => {
    const read = shared.store.read((opened) => rowsOf(opened, reasons, "WHERE id = $1", 3));
    await expect(read).rejects.toThrow("column voidReason is empty");
  });
});
