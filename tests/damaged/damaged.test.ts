import { randomInt } from "node:crypto";
import { expect, it } from "vitest";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { chanceOf } from "../ledger/chance.ts";
import { correctFolder } from "./correct-folder.ts";
import { damaged } from "./damage.ts";
import { imported } from "./read-items.ts";
import { type Tally, tallied, tallyText } from "./tally.ts";

const runs = Number(process.env.FOLDERS ?? 5);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));
const draws = 4000;
/** Generous: the machine may be busy with other tests. */
const longestRunMs = 20_000;

onEachDatabase(`folders with damaged lines, SEED=${firstSeed} FOLDERS=${runs}`, (fresh, kind) => {
  const shared = sharedStore(fresh);

  it(
    "name every loss that the folder itself can show, before their month is signed",
    async () => {
      const tallies: Tally[] = [];
      for (let seed = firstSeed; seed < firstSeed + runs; seed++) {
        const chance = chanceOf(seed, draws);
        const correct = correctFolder(chance);
        const { folder, damages } = damaged(correct.folder, chance);
        const found = await imported(shared.store, { folder, of: correct });
        tallies.push(tallied({ seed, correct, folder, damages, found }));
      }
      process.stdout.write(`${kind}, SEED=${firstSeed} FOLDERS=${runs}:\n${tallyText(tallies)}\n`);
      expect(tallies.flatMap(({ missed }) => missed)).toEqual([]);
    },
    runs * longestRunMs,
  );

  it(
    "have no item when nothing is damaged, and their month is signed",
    async () => {
      for (let seed = firstSeed; seed < firstSeed + runs; seed++) {
        const correct = correctFolder(chanceOf(seed, draws));
        const { items, asked, result, sign } = await imported(shared.store, { folder: correct.folder, of: correct });
        expect({ seed, items, asked, refused: result.replace(/^.* /, "") }).toEqual({
          ...{ seed, items: [], asked: [], refused: "refused" },
        });
        expect(result, `SEED=${seed}`).toContain(" 0 refused");
        expect(await sign(), `SEED=${seed}`).toEqual([]);
      }
    },
    runs * longestRunMs,
  );
});
