import { expect, it } from "vitest";
import type { PatientDayRow } from "../../src/domain/counting/patient-days.ts";
import { type LedgerPart, patientDays, postToLedger } from "../../src/store/ledger.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { dayOf } from "../reference/day-text.ts";

const first = dayOf("2024-03-01");

onEachDatabase("the ledger", (fresh, kind) => {
  const shared = sharedStore(fresh);

  /** A patient still in the hospital, who has no rows yet. */
  async function patientIn(bay: AlderBay, identifier: string): Promise<{ patientId: number; stayId: number }> {
    return bay.admit(identifier, "2024-03-01 10:00");
  }

  const post = (...parts: LedgerPart[]) => shared.store.tx((tx) => postToLedger(tx, parts));
  const rowsOf = (ids: readonly number[], from = -1_000_000) =>
    shared.store.read((read) => patientDays(read, ids, from));

  function rows(count: number, said: Omit<PatientDayRow, "day">, from = first): PatientDayRow[] {
    return Array.from({ length: count }, (_, i) => ({ day: from + i, ...said }));
  }

  /** Where each row physically lies: it changes when a row is written anew. */
  async function places(patientId: number): Promise<unknown[]> {
    const where = kind === "sqlite" ? "rowid" : "ctid::text || xmin::text";
    return shared.store.read((read) =>
      read.sql.rows(`SELECT day, ${where} AS place FROM patient_day WHERE patient_id = ${patientId} ORDER BY day`),
    );
  }

  it("says what it is told, on days before 1970 too, and gives it back by patient and day", async () => {
    const bay = await alderBay(shared.store);
    const one = await patientIn(bay, "P1");
    const two = await patientIn(bay, "P2");
    const ones = rows(3, { wardId: bay.a, stayId: one.stayId, catheter: true }, -2);
    const twos = rows(2, { wardId: bay.b, stayId: two.stayId, catheter: false });
    const parts = [
      { patientId: two.patientId, fromDay: first, rows: twos },
      { patientId: one.patientId, fromDay: -5, rows: ones },
    ];
    expect(await post(...parts)).toEqual({ removed: 0, added: 5 });
    const all = [
      ...ones.map((row) => ({ ...row, patientId: one.patientId })),
      ...twos.map((row) => ({ ...row, patientId: two.patientId })),
    ];
    expect(await rowsOf([two.patientId, one.patientId])).toEqual(all);
    expect(await rowsOf([one.patientId], 0)).toEqual(all.slice(2, 3));
    expect(await rowsOf([])).toEqual([]);
  });

  it("leaves right rows where they lie, and writes nothing when all are right", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await patientIn(bay, "P1");
    const said = rows(5, { wardId: bay.a, stayId, catheter: false });
    await post({ patientId, fromDay: first, rows: said });
    const before = await places(patientId);
    expect(await post({ patientId, fromDay: first, rows: said })).toEqual({ removed: 0, added: 0 });
    expect(await places(patientId)).toEqual(before);
    const longer = rows(6, { wardId: bay.a, stayId, catheter: false });
    expect(await post({ patientId, fromDay: first, rows: longer })).toEqual({ removed: 0, added: 1 });
    expect((await places(patientId)).slice(0, 5)).toEqual(before);
  });

  it("mends rows that are wrong in any way: ward, stay, catheter, missing, too many", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await patientIn(bay, "P1");
    const right = rows(6, { wardId: bay.a, stayId, catheter: true });
    const wrong = right.map((row, i) => ({
      ...row,
      wardId: i === 1 ? bay.b : row.wardId,
      stayId: i === 2 ? stayId + 1 : row.stayId,
      catheter: i !== 3,
    }));
    const extra = { day: first + 9, wardId: bay.a, stayId, catheter: false };
    await post({ patientId, fromDay: first, rows: [...wrong.slice(0, 5), extra] });
    expect(await post({ patientId, fromDay: first, rows: right })).toEqual({ removed: 4, added: 4 });
    expect(await rowsOf([patientId])).toEqual(right.map((row) => ({ ...row, patientId })));
  });

  it("leaves what lies before the day alone, of each patient by its own day", async () => {
    const bay = await alderBay(shared.store);
    const one = await patientIn(bay, "P1");
    const two = await patientIn(bay, "P2");
    const of = (p: typeof one, count: number) => rows(count, { wardId: bay.a, stayId: p.stayId, catheter: false });
    await post({ patientId: one.patientId, fromDay: first, rows: of(one, 4) });
    await post({ patientId: two.patientId, fromDay: first, rows: of(two, 4) });
    const emptied = [
      { patientId: one.patientId, fromDay: first + 3, rows: [] },
      { patientId: two.patientId, fromDay: first + 1, rows: [] },
    ];
    expect(await post(...emptied)).toEqual({ removed: 4, added: 0 });
    const left = (await rowsOf([one.patientId, two.patientId])).map((row) => [row.patientId, row.day - first]);
    expect(left).toEqual([
      [one.patientId, 0],
      [one.patientId, 1],
      [one.patientId, 2],
      [two.patientId, 0],
    ]);
  });

  it("holds one row for a patient and day: the database itself refuses a second, on whatever ward", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await patientIn(bay, "P1");
    await post({ patientId, fromDay: first, rows: rows(1, { wardId: bay.a, stayId, catheter: true }) });
    const second = { patientId, day: first, wardId: bay.b, stayId, catheter: false };
    await expect(shared.store.tx((tx) => tx.db.patientDay.create({ data: second }))).rejects.toMatchObject({
      code: "P2002",
    });
    const twice = rows(1, { wardId: bay.a, stayId, catheter: true }, first + 1);
    await expect(post({ patientId, fromDay: first + 1, rows: [...twice, ...twice] })).rejects.toThrow(
      /[Uu]nique|UNIQUE|duplicate key/,
    );
    expect(await rowsOf([patientId])).toHaveLength(1);
  });

  it("belongs to patients and wards that are there", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await patientIn(bay, "P1");
    const nowhere = rows(1, { wardId: -1, stayId, catheter: false });
    await expect(post({ patientId, fromDay: first, rows: nowhere })).rejects.toThrow(/[Ff]oreign key|FOREIGN KEY/);
    expect(await post()).toEqual({ removed: 0, added: 0 });
  });
});
