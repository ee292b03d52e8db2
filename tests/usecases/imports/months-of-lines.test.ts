import { expect, it } from "vitest";
import { dropImportLine } from "../../../src/usecases/imports/settle-line.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles } from "./files.ts";
import { lineItems } from "./line-items.ts";

const time = "2024-06-02 08:00";
const stays = ["stay,patient,admitted,discharged", "S1,P1,2024-04-02T08:00,2024-04-12T08:00"];
const moves = ["stay,patient,ward,from,to", "S1,P1,A,2024-04-02T08:00,2024-04-12T08:00"];
const catheters = ["stay,catheter,inserted,removed"];
const specimens = ["stay,kind,collected,organism,count"];

onEachDatabase("rejected lines whose days are not certain", (fresh) => {
  const shared = sharedStore(fresh);
  const bay = () => alderBay(shared.store);

  it("without an end are missing in the months that come after their import too, until they are dropped", async () => {
    const { at } = await bay();
    const lasting: Files = {
      ...{ "stays.csv": stays, "moves.csv": moves },
      "catheters.csv": [...catheters, "S7,C7,2024-05-28T08:00,"],
    };
    const { importId } = await importFiles(at("2024-05-31 08:00"), lasting, { setAside: true });
    const missing = ["rejected-catheters 1 blocks | Unit not readable: 1. | catheters.csv:2"];
    expect(await lineItems(at("2024-09-02 08:00"), "2024-04")).toEqual([]);
    for (const month of ["2024-05", "2024-06", "2024-08"])
      expect(await lineItems(at("2024-09-02 08:00"), month)).toEqual(missing);
    const place = { importId, file: "catheters.csv", line: 2 } as const;
    await dropImportLine(at("2024-07-02 08:00"), { ...place, reason: "Another hospital's patient" });
    const dropped = ["dropped-lines 1 | Unit not readable: 1. | catheters.csv:2"];
    for (const month of ["2024-05", "2024-06", "2024-07"])
      expect(await lineItems(at("2024-09-02 08:00"), month)).toEqual(dropped);
    expect(await lineItems(at("2024-09-02 08:00"), "2024-08")).toEqual([]);
  });

  it("with a mistyped month are missing in the months of their stay", async () => {
    const { at } = await bay();
    const mistyped: Files = {
      ...{ "stays.csv": stays, "moves.csv": moves },
      // Inserted on 4 April and collected on 5 April.
      "catheters.csv": [...catheters, "S1,C1,2024-05-04T08:00,2024-04-09T08:00"],
      "specimens.csv": [...specimens, "S1,urine,2024-05-05T08:00,,100000"],
    };
    await importFiles(at(time), mistyped, { setAside: true });
    for (const month of ["2024-04", "2024-05"])
      expect((await lineItems(at(time), month)).map((gap) => gap.split(" | ")[0])).toEqual([
        ...["rejected-catheters 1 blocks", "rejected-specimens 1"],
      ]);
    expect(await lineItems(at(time), "2024-03")).toEqual([]);
  });
});
