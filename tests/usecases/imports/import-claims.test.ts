import { expect, it } from "vitest";
import type { Claim, Store, Tx } from "../../../src/store/store.ts";
import { importLines } from "../../../src/usecases/imports/import-lines.ts";
import type { ImportProgress, IntakeItem } from "../../../src/usecases/imports/intake-item.ts";
import { resumeImports } from "../../../src/usecases/imports/resume-imports.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { importFiles, itemsOf, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const files = {
  "moves.csv": ["stay,patient,ward,from,to", "S1,P1,A,2024-03-01T08:00,2024-03-05T08:00", "S2,P2,A,2024-03-02T08:00,"],
};

/** The store, with something done before each transaction of an import that holds its claim. */
function watched(store: Store, before: (importId: number) => Promise<void>): Store {
  let importId: number | undefined;
  return {
    ...store,
    claim: (id) => {
      importId = id;
      return store.claim(id);
    },
    tx: async (work, options) => {
      if (importId !== undefined) await before(importId);
      return store.tx(work, options);
    },
  };
}

onEachDatabase("an import at work", (fresh) => {
  const shared = sharedStore(fresh);

  const isFree = async (importId: number) => {
    const claim = await shared.store.claim(importId);
    await claim?.release();
    return claim !== null;
  };

  const stateOf = async (facilityId: number) => {
    const rows = await shared.store.read((read) => read.db.import.findMany({ where: { facilityId } }));
    return rows.map(({ id, state }) => ({ id, state }));
  };

  it("is nobody else's to its very end, whatever others start meanwhile", async () => {
    const bay = await alderBay(shared.store);
    const seen: boolean[] = [];
    const store = watched(shared.store, async (importId) => {
      seen.push(await isFree(importId));
      expect(await resumeImports({ store: shared.store, now: utc(time) })).toEqual([]);
    });
    const result = await importFiles({ ...bay.at(time), store }, files);
    expect(resultText(result)).toBe("applied: 2 accepted, 0 marked, 0 unchanged, 0 refused");
    // At the least: its lines put down, tried, decided, stored, and its end.
    expect(seen.length).toBeGreaterThanOrEqual(5);
    expect(seen).not.toContain(true);
    expect(await isFree(result.importId)).toBe(true);
  });

  it("that fails lets go of its claim, so that the next start can finish it", async () => {
    const bay = await alderBay(shared.store);
    const onProgress = ({ phase }: ImportProgress) => {
      if (phase === "applying") throw new Error("the power failed");
    };
    await expect(importFiles(bay.at(time), files, { onProgress })).rejects.toThrow("the power failed");
    expect(await stateOf(bay.facilityId)).toMatchObject([{ state: "applying" }]);
    const results = await resumeImports({ store: shared.store, now: utc(time) });
    expect(results.map(resultText)).toEqual(["applied: 2 accepted, 0 marked, 0 unchanged, 0 refused"]);
    expect((await ledgerOfAll(bay.at(time))).rows).toBe(4);
  });

  it("whose files cannot be read to their end lets go of its claim, and nothing of it counts", async () => {
    const bay = await alderBay(shared.store);
    const many = Array.from({ length: 2001 }, (_, n) => `S${n},P${n},A,2024-03-01T08:00,`);
    async function* broken(): AsyncIterable<IntakeItem> {
      yield* itemsOf({ "moves.csv": ["stay,patient,ward,from,to", ...many] });
      throw new Error("the disk is gone");
    }
    const options = { dryRun: false, setAside: false, assumeInpatient: false };
    await expect(importLines(bay.at(time), broken(), options)).rejects.toThrow("the disk is gone");
    const [row] = await stateOf(bay.facilityId);
    expect(row?.state).toBe("staging");
    const results = await resumeImports({ store: shared.store, now: utc(time) });
    expect(results).toMatchObject([{ importId: row?.id, state: "refused" }]);
  });

  it("fails aloud when a line that was read was settled nowhere", async () => {
    const bay = await alderBay(shared.store);
    let isTried = false;
    const store = watched(shared.store, async (importId) => {
      if (isTried) await shared.store.tx((tx: Tx) => tx.db.importLine.deleteMany({ where: { importId, line: 3 } }));
      isTried = false;
    });
    const onProgress = ({ phase, done, total }: ImportProgress) => {
      if (phase === "checking" && done === total) isTried = true;
    };
    const importing = importFiles({ ...bay.at(time), store }, files, { onProgress });
    await expect(importing).rejects.toThrow(/read 2 lines and settled 1/);
  });

  it("that somebody else ended stops, and stores nothing more", async () => {
    const bay = await alderBay(shared.store);
    const ended = watched(shared.store, async (importId) => {
      await shared.store.tx((tx) => tx.db.import.updateMany({ where: { id: importId }, data: { state: "refused" } }));
    });
    await expect(importFiles({ ...bay.at(time), store: ended }, files)).rejects.toMatchObject({
      code: "import-interrupted",
    });
    expect((await ledgerOfAll(bay.at(time))).rows).toBe(0);
    expect(await stateOf(bay.facilityId)).toMatchObject([{ state: "refused" }]);
  });

  it("that somebody took as it began is refused", async () => {
    const bay = await alderBay(shared.store);
    const taken: Store = { ...shared.store, claim: async (): Promise<Claim | null> => null };
    await expect(importFiles({ ...bay.at(time), store: taken }, files)).rejects.toMatchObject({
      code: "import-interrupted",
    });
    expect((await ledgerOfAll(bay.at(time))).rows).toBe(0);
  });
});
