import { expect, it } from "vitest";
import { setImportState } from "../../../src/store/imports.ts";
import { applyImport } from "../../../src/usecases/imports/apply-import.ts";
import { checkImport } from "../../../src/usecases/imports/check-import.ts";
import { resumeImports } from "../../../src/usecases/imports/resume-imports.ts";
import { stageImport } from "../../../src/usecases/imports/stage-import.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { type Files, importFiles, itemsOf, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const later = "2024-03-11 08:00";
/** More than one transaction takes. */
const patients = 520;
/** Two midnights on ward A for each, and one line that contradicts the first. */
const files: Files = {
  "moves.csv": [
    "stay,patient,ward,from,to",
    ...Array.from({ length: patients }, (_, n) => `S${n},P${n},A,2024-03-01T08:00,2024-03-03T08:00`),
    "S0,P0,B,2024-03-02T08:00,",
  ],
};
const options = { dryRun: false, setAside: true, assumeInpatient: false };

/** An import of the files that nobody works on any more, after these steps of it. */
async function brokenOff(
  bay: AlderBay,
  steps: (importId: number, total: number) => Promise<unknown> = async () => undefined,
): Promise<void> {
  const { importId, waiting, claim } = await stageImport(bay.at(time), itemsOf(files), options);
  await steps(importId, waiting);
  await claim.release();
}

/** Breaks off where an import can break off; each step goes further than the one before it. */
const breaks = {
  "while lines arrive": (bay: AlderBay) => brokenOff(bay),
  "when all were tried": (bay: AlderBay) =>
    brokenOff(bay, (importId, total) => checkImport(bay.at(time), { importId, total }, options)),
  "when it was decided": (bay: AlderBay) =>
    brokenOff(bay, async (importId, total) => {
      await checkImport(bay.at(time), { importId, total }, options);
      await bay.store.tx((tx) => setImportState(tx, importId, "applying"));
    }),
  "when some were stored": async (bay: AlderBay) => {
    await brokenOff(bay, async (importId, total) => {
      await checkImport(bay.at(time), { importId, total }, options);
      const onProgress = ({ done }: { done: number }) => {
        if (done > 0) throw new Error("the power failed");
      };
      const applying = applyImport(bay.at(time), { importId, total }, { ...options, onProgress });
      await expect(applying).rejects.toThrow("the power failed");
    });
    const { rows } = await ledgerOfAll(bay.at(time));
    expect(rows).toBeGreaterThan(0);
    expect(rows).toBeLessThan(2 * patients);
  },
  "when all were stored": (bay: AlderBay) =>
    brokenOff(bay, async (importId, total) => {
      await checkImport(bay.at(time), { importId, total }, options);
      await applyImport(bay.at(time), { importId, total }, options);
    }),
} as const;
const isDecided = (when: string) => /decided|stored/.test(when);
type Break = keyof typeof breaks;

onEachDatabase("an import that broke off", (fresh) => {
  const shared = sharedStore(fresh);

  it.each(Object.keys(breaks) as Break[])("%s is all or none after the next start", async (when) => {
    const bay = await alderBay(shared.store);
    await breaks[when](bay);
    const results = await resumeImports({ store: shared.store, now: utc(later) });
    const decided = isDecided(when);
    // What waited when it was dropped is told as accepted: nothing else was known of it.
    const untried = when === "while lines arrive";
    expect(results.map(resultText)).toEqual([
      decided
        ? `applied: ${patients} accepted, 0 marked, 0 unchanged, 1 refused`
        : `refused: ${patients + (untried ? 1 : 0)} accepted, 0 marked, 0 unchanged, ${untried ? 0 : 1} refused`,
    ]);
    expect(await ledgerOfAll(bay.at(later))).toEqual({ rows: decided ? 2 * patients : 0, differences: 0 });
    const [end] = (await auditOf(shared.store, bay.facilityId)).filter(({ action }) => action === "import");
    // The audit trail keeps the sums of the import, not of each file.
    const details = Object.fromEntries(Object.entries(results[0] ?? {}).filter(([key]) => key !== "files"));
    expect(end).toMatchObject({ at: utc(later), personId: bay.personId, details });
    // A second start has nothing to do, and the folder can be imported again in full.
    expect(await resumeImports({ store: shared.store, now: utc(later) })).toEqual([]);
    const again = await importFiles(bay.at(later), files, { setAside: true });
    expect(again).toMatchObject({ state: "applied", unchanged: decided ? patients : 0, refused: 1 });
    expect(await ledgerOfAll(bay.at(later))).toEqual({ rows: 2 * patients, differences: 0 });
  });

  it("goes on in its own facility, beside others, and as it was decided about wards without a setting", async () => {
    const [one, other] = [await alderBay(shared.store), await alderBay(shared.store)];
    const named = { "moves.csv": ["stay,patient,ward,from,to", "S1,P1,C,2024-03-01T08:00,2024-03-03T08:00"] };
    for (const [bay, assumeInpatient] of [
      [one, true],
      [other, false],
    ] as const) {
      const staged = await stageImport(bay.at(time), itemsOf(named), { ...options, assumeInpatient });
      for (const state of ["checking", "applying"] as const)
        await shared.store.tx((tx) => setImportState(tx, staged.importId, state));
      await staged.claim.release();
    }
    const results = await resumeImports({ store: shared.store, now: utc(later) });
    expect(results.map((result) => result.state)).toEqual(["applied", "applied"]);
    expect((await ledgerOfAll(one.at(later))).rows).toBe(2);
    expect((await ledgerOfAll(other.at(later))).rows).toBe(0);
  });

  it("is left alone while somebody works on it", async () => {
    const bay = await alderBay(shared.store);
    const { importId, claim } = await stageImport(bay.at(time), itemsOf(files), options);
    expect(await resumeImports({ store: shared.store, now: utc(later) })).toEqual([]);
    await claim.release();
    const [dropped] = await resumeImports({ store: shared.store, now: utc(later) });
    expect(dropped).toMatchObject({ importId, state: "refused" });
  });
});
