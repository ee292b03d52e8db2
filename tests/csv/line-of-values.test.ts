import { describe, expect, it } from "vitest";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { cellsOf, lineOfValues } from "../../src/csv/line-of-values.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";
import { faultsOf } from "../databases/refusal.ts";

const utc = { zone: zoneNamed("UTC"), settings: defaultSourceSettings };
const valuesOf = (file: string, text: string, header?: string) =>
  Object.fromEntries((cellsOf(file, text, header) ?? []).map(({ column, value }) => [column, value]));

describe("the cells of a line", () => {
  it("stand under every column of the layout, whatever the order and the delimiter of the file", () => {
    expect(valuesOf("daily-counts.csv", "3; 2026-11-10 ;9;3E", "catheters;day;patients;ward")).toEqual({
      ...{ ward: "3E", day: "2026-11-10", patients: "9", catheters: "3" },
    });
    expect(cellsOf("daily-counts.csv", "", undefined)?.every(({ required }) => required)).toBe(true);
    expect(cellsOf("moves.csv", "", undefined)?.filter(({ required }) => !required)).toMatchObject([
      { column: "bed" },
      { column: "to" },
      { column: "absence" },
    ]);
  });

  it("are taken out of their quotes", () => {
    expect(valuesOf("wards.csv", 'A,"Ward ""A"", east"', "ward,name")).toMatchObject({ name: 'Ward "A", east' });
  });

  it("are empty where the line cannot be divided, or the header is not known", () => {
    expect(Object.values(valuesOf("daily-counts.csv", 'A,"2026', "ward,day,patients,catheters"))).toEqual([
      "",
      "",
      "",
      "",
    ]);
    expect(Object.values(valuesOf("daily-counts.csv", "A,1,2,3"))).toEqual(["", "", "", ""]);
    expect(Object.values(valuesOf("daily-counts.csv", "A,1,2,3", "not,the,header,of it"))).toEqual(["", "", "", ""]);
    expect(valuesOf("daily-counts.csv", "A,2026-11-10", "ward,day,patients,catheters")).toMatchObject({ patients: "" });
    expect(cellsOf("notes.csv", "A", "stay")).toBeNull();
  });
});

describe("a line of values", () => {
  const given = { file: "wards.csv", line: 7, values: { ward: " A ", name: 'East, "old"' } };

  it("is read as if a file had it, and is the same line again in a file", () => {
    const line = lineOfValues(given, utc);
    expect(line).toMatchObject({
      type: "line",
      file: "wards.csv",
      line: 7,
      values: { ward: "A", name: 'East, "old"' },
    });
    const header = "ward,name,type,setting,beds,opened,closed";
    expect(valuesOf("wards.csv", line.raw, header)).toMatchObject({ ward: "A", name: 'East, "old"', beds: "" });
  });

  it("is refused at each column that cannot be read", async () => {
    const values = { ...given.values, ward: "", beds: "many" };
    const faults = await faultsOf(() => lineOfValues({ ...given, values }, utc));
    expect(faults.map(({ code, pointer }) => [code, pointer])).toEqual([
      ["csv-cell-empty", "/values/ward"],
      ["csv-number", "/values/beds"],
    ]);
  });

  it("is refused for columns and files that are not known, which are not repeated", async () => {
    const column = await faultsOf(() => lineOfValues({ ...given, values: { ward: "A", "ALDER-1001": "x" } }, utc));
    expect(column).toMatchObject([{ code: "csv-column-unknown", pointer: "/values" }]);
    expect(JSON.stringify(column)).not.toContain("ALDER-1001");
    const file = await faultsOf(() => lineOfValues({ ...given, file: "notes.csv" }, utc));
    expect(file).toMatchObject([{ code: "files-unknown", pointer: "/file" }]);
  });
});
