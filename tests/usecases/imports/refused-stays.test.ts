import { expect, it } from "vitest";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";

onEachDatabase("what is said of a stay whose own line is refused", (fresh) => {
  const shared = sharedStore(fresh);

  /** Imports with refused lines set aside; tells the result and the refused lines with their first faults. */
  async function refusedOf(bay: AlderBay, stays: readonly string[]): Promise<string[]> {
    const files: Files = {
      "stays.csv": ["patient,stay,admitted,discharged", "P2,S2,2024-03-01T08:00,2024-03-03T08:00", ...stays],
      "moves.csv": [
        "stay,patient,ward,from,to",
        "S1,P1,A,2024-03-01T08:00,2024-03-03T08:00",
        "S2,P2,A,2024-03-01T08:00,2024-03-03T08:00",
      ],
      "catheters.csv": ["stay,inserted", "S1,2024-03-01T09:00", "S2,2024-03-01T09:00"],
    };
    const result = await importFiles(bay.at(time), files, { setAside: true });
    const rows = await shared.store.read((read) =>
      read.db.importLine.findMany({
        where: { importId: result.importId, state: "refused" },
        orderBy: [{ file: "asc" }, { line: "asc" }],
      }),
    );
    const lines = rows.map(({ file, line, faults }) => {
      const [{ code, column, other = "" }] = JSON.parse(faults ?? "[]");
      return `${file} ${line}: ${code} ${column} ${other}`.trim();
    });
    return [resultText(result), ...lines];
  }

  it.each([
    ["could not be read", "P1,S1,yesterday,", "time-unreadable admitted"],
    ["could not be read behind its number", "P1,S1,2024-03-01T08:00,03/04/2024", "csv-date-ambiguous discharged"],
    ["lies in the future", "P1,S1,2024-03-10T12:06,", "in-the-future admitted"],
    ["ends in the future", "P1,S1,2024-03-01T08:00,2024-03-10T12:06", "in-the-future discharged"],
    ["cannot be", "P1,S1,2024-03-03T08:00,2024-03-01T08:00", "end-before-start discharged"],
  ])("is refused with it, when that one %s", async (_, line, fault) => {
    const bay = await alderBay(shared.store);
    expect(await refusedOf(bay, [line])).toEqual([
      "applied: 3 accepted, 0 marked, 0 unchanged, 3 refused",
      "catheters.csv 2: stay-refused stay stays.csv line 3",
      "moves.csv 2: stay-refused stay stays.csv line 3",
      `stays.csv 3: ${fault}`,
    ]);
    const numbers = await shared.store.read((read) =>
      read.db.stay.findMany({ where: { facilityId: bay.facilityId }, select: { number: true } }),
    );
    expect(numbers).toEqual([{ number: "S2" }]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 2, differences: 0 });
  });

  it("comes in once that line is mended", async () => {
    const bay = await alderBay(shared.store);
    await refusedOf(bay, ["P1,S1,yesterday,"]);
    expect(await refusedOf(bay, ["P1,S1,2024-03-01T08:00,2024-03-03T08:00"])).toEqual([
      "applied: 3 accepted, 0 marked, 3 unchanged, 0 refused",
    ]);
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 4, differences: 0 });
  });

  it("is let be when nobody can tell which stay the line was about", async () => {
    const bay = await alderBay(shared.store);
    expect(await refusedOf(bay, ["P1,,2024-03-01T08:00,"])).toEqual([
      "applied: 5 accepted, 0 marked, 0 unchanged, 1 refused",
      "stays.csv 3: csv-cell-empty stay",
    ]);
  });
});
