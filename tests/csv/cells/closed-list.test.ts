import { describe, expect, it } from "vitest";
import { absenceKinds, catheterKinds, wardSettings } from "../../../shared/vocabulary.ts";
import { closedList } from "../../../src/csv/cells/closed-list.ts";
import { alderBay } from "../written-files.ts";
import { readCell } from "./read-cell.ts";

describe("closedList", () => {
  it.each(["ileal-conduit", "Ileal conduit", "ILEAL_CONDUIT", "ileal - conduit"])("reads %j", (text) => {
    expect(readCell(closedList(catheterKinds), text).value).toBe("ileal-conduit");
  });

  it.each([absenceKinds, catheterKinds, wardSettings])("reads every word of a list", (list) => {
    const words = Object.keys(list);
    expect(words.map((word) => readCell(closedList<string>(list), word).value)).toEqual(words);
  });

  it.each(["ileal", "ileal conduits", "constructor", "-"])("refuses %j", (text) => {
    expect(readCell(closedList(catheterKinds), text).value).toBe("csv-word");
  });

  it("names the list", () => {
    const read = () => closedList(absenceKinds).read("home", { ...alderBay, mark: () => undefined });
    expect(read).toThrow("This is none of: procedure, leave, outpatient.");
  });
});
