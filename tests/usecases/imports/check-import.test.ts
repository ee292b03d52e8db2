import { describe, expect, it } from "vitest";
import type { LineOf } from "../../../src/domain/intake/intake-line.ts";
import { checkImport, countOutcome, yieldToOthers } from "../../../src/usecases/imports/check-import.ts";
import { stageImport } from "../../../src/usecases/imports/stage-import.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { everything } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { itemsOf, linesOf } from "./files.ts";

const options = { dryRun: false, setAside: false, assumeInpatient: false };

/** The tables without those of imports themselves. */
function ofTheRecord(tables: Awaited<ReturnType<typeof everything>>) {
  return Object.fromEntries(Object.entries(tables).filter(([table]) => !table.startsWith("import")));
}

onEachDatabase("trying lines", (fresh) => {
  const shared = sharedStore(fresh);

  it("finds each line that cannot be, against the record and the other lines, and changes nothing of the record", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-03-01 08:00", "2024-03-05 08:00", { number: "S1" });
    const act = bay.at("2024-03-10 12:00");
    const { importId, waiting: total } = await stageImport(
      act,
      itemsOf({
        "moves.csv": [
          "stay,patient,ward,from,to",
          "S2,P1,A,2024-03-04T08:00,2024-03-06T08:00",
          "S3,P3,C,2024-03-04T08:00,2024-03-06T08:00",
          "S3,P3,A,2024-03-05T08:00,2024-03-06T08:00",
          "S4,P4,A,2024-03-10T12:06,",
        ],
        "catheters.csv": ["stay,inserted", "S3,2024-03-06T09:00", "S9,2024-03-04T08:00"],
        "daily-counts.csv": ["ward,day,patients,catheters", "A,2024-03-04,2,3", "C,2024-03-04,2,1"],
      }),
      options,
    );
    const before = await everything(shared.store);
    const none = { added: 0, changed: 0 };
    const one = { added: 1, changed: 0 };
    // Left over are line 3 of the moves, which makes a stay and the ward C, and a count.
    expect(await checkImport(act, { importId, total }, options)).toMatchObject({
      refused: 6,
      effects: { wards: one, stays: one, moves: one, catheters: none, reviews: none, specimens: none, signs: none },
    });
    expect(await linesOf(shared.store, importId)).toEqual([
      ...["catheters.csv 2 refused", "catheters.csv 3 refused"],
      ...["daily-counts.csv 2 refused", "daily-counts.csv 3 staged"],
      ...["moves.csv 2 refused", "moves.csv 3 staged", "moves.csv 4 refused", "moves.csv 5 refused"],
    ]);
    expect(ofTheRecord(await everything(shared.store))).toEqual(ofTheRecord(before));
  });
});

describe("a count made by hand", () => {
  const outcome = (values: Partial<LineOf<"daily-counts.csv">["values"]>) =>
    countOutcome(
      {
        ...{ file: "daily-counts.csv", line: 2, marks: [], raw: "" },
        values: { ward: "A", day: 10, patients: 3, catheters: 1, ...values },
      },
      10,
    );

  it("is accepted up to today, and refused at the column that cannot be", () => {
    expect(outcome({})).toEqual({ state: "accepted" });
    expect(outcome({ day: 11 })).toMatchObject({ faults: [{ code: "in-the-future", column: "day" }] });
    expect(outcome({ patients: -1 })).toMatchObject({ faults: [{ code: "count-impossible", column: "patients" }] });
    expect(outcome({ catheters: 4 })).toMatchObject({ faults: [{ code: "count-impossible", column: "catheters" }] });
  });
});

it("long work lets others have their turn", async () => {
  const turns: string[] = [];
  setImmediate(() => turns.push("another"));
  await yieldToOthers();
  turns.push("the import again");
  expect(turns).toEqual(["another", "the import again"]);
});
