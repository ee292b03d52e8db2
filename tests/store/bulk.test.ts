import fc from "fast-check";
import { expect, it } from "vitest";
import { idList, insertRows, jsonRows, updateRows } from "../../src/store/bulk.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

/** A table with every kind of column, as a bulk insert sees it. */
const table = {
  table: "catheter",
  columns: {
    id: "int",
    stay_id: "int",
    kind: "text",
    indication: "text",
    in_place_on_arrival: "bool",
    inserted_at: "instant",
    size_fr: "real",
    version: "int",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

interface Row {
  readonly indication: string | null;
  readonly inPlaceOnArrival: boolean;
  readonly insertedAt: number | null;
  readonly sizeFr: number | null;
  readonly version: number;
}

const texts = [
  ...["", " ", "O'Brien", 'say "no"', "back\\slash", "00123", "1e5", "true", "null", "NULL", "{}", "[1]", "$1", "?"],
  ...[
    "tab\tand\nbreak\r\n",
    "Zoë Łukasz Ørn",
    "日本語",
    "🚑 ambulance",
    "e\u0301",
    "\u202eright",
    "'; DROP TABLE stay; --",
  ],
];
const instants = [
  ...[0, -1, 1, utc("2024-02-29 23:59:59.999"), utc("2024-03-10 02:30:00.001"), utc("1900-01-01 00:00:00.500")],
  ...[utc("2038-01-19 03:14:08"), utc("2199-12-31 23:59:59.123")],
];

onEachDatabase("many rows at once", (fresh) => {
  const shared = sharedStore(fresh);

  /** Puts rows down for a stay and reads them back through Prisma, in the order in which they were put. */
  async function roundTrip(rows: readonly Row[], changed?: readonly Row[]): Promise<Row[]> {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    const ids = { ids: rows.length };
    const cells = (id: number, row: Row) => [
      ...[id, stayId, "suprapubic", row.indication, row.inPlaceOnArrival, row.insertedAt, row.sizeFr],
      ...[row.version, 0, bay.personId],
    ];
    await shared.store.tx(async (tx) => {
      const numbered = rows.map((row) => ({ id: tx.newId(), row }));
      await insertRows(
        tx,
        table,
        numbered.map(({ id, row }) => cells(id, row)),
      );
      if (changed)
        await updateRows(
          tx,
          table,
          numbered.map(({ id }, i) => cells(id, changed[i] as Row)),
        );
    }, ids);
    const stored = await shared.store.read((read) =>
      read.db.catheter.findMany({ where: { stayId }, orderBy: { id: "asc" } }),
    );
    return stored.map(({ indication, inPlaceOnArrival, insertedAt, sizeFr, version }) => ({
      indication,
      inPlaceOnArrival,
      sizeFr,
      version,
      insertedAt: insertedAt === null ? null : insertedAt.getTime(),
    }));
  }

  const plain: Row = { indication: null, inPlaceOnArrival: false, insertedAt: null, sizeFr: null, version: 1 };

  it("come back as they were put: any text, instants to the millisecond, numbers, yes and no, nothing", async () => {
    const rows: Row[] = [
      plain,
      ...texts.map((indication) => ({ ...plain, indication })),
      ...instants.map((insertedAt) => ({ ...plain, insertedAt })),
      ...[16, 12.5, 0.1, 0, 1e-7, 123456.789].map((sizeFr) => ({ ...plain, sizeFr })),
      ...[0, -7, 2_147_483_647].map((version) => ({ ...plain, version })),
      { ...plain, inPlaceOnArrival: true },
    ];
    expect(await roundTrip(rows)).toEqual(rows);
  });

  it("come back as they were put, for any text and instant", async () => {
    const row = fc.record({
      indication: fc.option(fc.string({ unit: "binary" }).map((s) => s.replaceAll("\0", ""))),
      inPlaceOnArrival: fc.boolean(),
      insertedAt: fc.option(fc.integer({ min: utc("1900-01-01 00:00"), max: utc("2200-01-01 00:00") })),
      sizeFr: fc.option(fc.double({ min: 0, max: 1000, noNaN: true }).map((x) => (x === 0 ? 0 : x))),
      version: fc.integer({ min: -2_147_483_648, max: 2_147_483_647 }),
    });
    const check = fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 50 }), async (list) => {
      expect(await roundTrip(list)).toEqual(list);
    });
    await fc.assert(check, { numRuns: 15 });
  });

  it("are replaced by their ids with values of every kind, and with nothing", async () => {
    const full: Row = { indication: "O'Brien", inPlaceOnArrival: true, insertedAt: 1, sizeFr: 14.5, version: 2 };
    const empty: Row = { ...plain, version: 3 };
    expect(await roundTrip([plain, full, plain], [full, empty, plain])).toEqual([full, empty, plain]);
  });

  it("may be none", async () => {
    expect(await roundTrip([])).toEqual([]);
  });

  it("are ten thousand without trouble, and as many ids can be asked for", async () => {
    const names = Array.from({ length: 10_000 }, (_, i) => `n${i}`);
    const blocks = { table: "id_block", columns: { name: "text", next: "int" } } as const;
    const found = await shared.store.tx(async (tx) => {
      await insertRows(
        tx,
        blocks,
        names.map((name, i) => [name, i + 1_000_000]),
      );
      const list = JSON.stringify(names.map((_, i) => i + 1_000_000));
      return tx.sql.rows<{ n: bigint }>(`SELECT count(*) AS n FROM "id_block" WHERE "next" IN ${idList(tx, 1)}`, list);
    });
    expect(Number(found[0]?.n)).toBe(10_000);
  });

  it("skip what is there already when told to", async () => {
    const blocks = { table: "id_block", columns: { name: "text", next: "int" } } as const;
    const skip = "ON CONFLICT (name) DO NOTHING";
    await shared.store.tx((tx) => insertRows(tx, blocks, [["old", 1]]));
    await shared.store.tx((tx) =>
      insertRows(
        tx,
        blocks,
        [
          ["new", 2],
          ["old", 3],
        ],
        skip,
      ),
    );
    const rows = await shared.store.read((read) =>
      read.db.idBlock.findMany({ where: { name: { in: ["old", "new"] } }, orderBy: { next: "asc" } }),
    );
    expect(rows).toEqual([
      { name: "old", next: 1 },
      { name: "new", next: 2 },
    ]);
  });

  it("are given to a statement as one parameter with one row for each", async () => {
    const rows = await shared.store.read((read) =>
      read.sql.rows<{ n: bigint }>(`SELECT count(*) AS n FROM ${jsonRows(read, 1)}`, "[[1],[2],[3]]"),
    );
    expect(Number(rows[0]?.n)).toBe(3);
  });
});
