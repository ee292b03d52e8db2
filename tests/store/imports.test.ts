import { expect, it } from "vitest";
import { addImport, importsIn, setImportState } from "../../src/store/imports.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const options = { setAside: true, assumeInpatient: false, sourceId: null };

onEachDatabase("an import", (fresh) => {
  const shared = sharedStore(fresh);

  it("begins as staging, in the name of who brought it, with its options", async () => {
    const bay = await alderBay(shared.store);
    const id = await shared.store.tx((tx) => addImport(tx, bay.by("2024-03-01 08:00"), options));
    const found = (await shared.store.read((read) => importsIn(read, ["staging"]))).filter((row) => row.id === id);
    expect(found).toEqual([
      {
        id,
        facilityId: bay.facilityId,
        personId: bay.personId,
        state: "staging",
        setAside: true,
        assumeInpatient: false,
        sourceId: null,
      },
    ]);
  });

  it("moves on from state to state, and its end carries what became of the lines and when", async () => {
    const bay = await alderBay(shared.store);
    const id = await shared.store.tx((tx) => addImport(tx, bay.by("2024-03-01 08:00"), options));
    for (const state of ["checking", "applying"] as const) await shared.store.tx((tx) => setImportState(tx, id, state));
    const rowOf = () => shared.store.read((read) => read.db.import.findUniqueOrThrow({ where: { id } }));
    expect(await rowOf()).toMatchObject({ state: "applying", summary: null, finishedAt: null });
    const end = { summary: { accepted: 3 }, finishedAt: utc("2024-03-01 09:00") };
    await shared.store.tx((tx) => setImportState(tx, id, "applied", end));
    const row = await rowOf();
    expect([row.state, row.summary, row.finishedAt?.getTime()]).toEqual([
      "applied",
      '{"accepted":3}',
      utc("2024-03-01 09:00"),
    ]);
  });

  it.each([
    ["applying", ["checking", "refused", "dry-run"]],
    ["refused", ["checking", "applying", "applied", "dry-run", "refused"]],
    ["applied", ["checking", "applying", "refused", "dry-run", "applied"]],
    ["dry-run", ["checking", "applying", "applied", "refused"]],
  ] as const)("goes neither back nor on from %s when somebody else ended it", async (state, forbidden) => {
    const bay = await alderBay(shared.store);
    const id = await shared.store.tx((tx) => addImport(tx, bay.by("2024-03-01 08:00"), options));
    const way = {
      applying: ["checking"],
      refused: [],
      applied: ["checking", "applying"],
      "dry-run": ["checking"],
    } as const;
    for (const step of [...way[state], state]) await shared.store.tx((tx) => setImportState(tx, id, step));
    for (const next of forbidden) {
      await expect(shared.store.tx((tx) => setImportState(tx, id, next))).rejects.toMatchObject({
        code: "import-interrupted",
      });
    }
    const row = await shared.store.read((read) => read.db.import.findUniqueOrThrow({ where: { id } }));
    expect(row.state).toBe(state);
  });

  it("is found by its state, oldest first", async () => {
    const bay = await alderBay(shared.store);
    const add = () => shared.store.tx((tx) => addImport(tx, bay.by("2024-03-01 08:00"), options));
    const ids = [await add(), await add(), await add()];
    const [one = 0, two = 0] = ids;
    await shared.store.tx((tx) => setImportState(tx, one, "checking"));
    for (const state of ["checking", "dry-run"] as const) await shared.store.tx((tx) => setImportState(tx, two, state));
    const found = async (...states: Parameters<typeof importsIn>[1]) =>
      (await shared.store.read((read) => importsIn(read, states)))
        .map((row) => row.id)
        .filter((id) => ids.includes(id));
    expect(await found("checking", "staging")).toEqual([one, ids[2]]);
    expect(await found("dry-run")).toEqual([two]);
    expect(await found()).toEqual([]);
  });
});
