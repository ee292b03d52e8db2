import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCsvFile } from "../../src/csv/read-file.ts";
import { alderBay, folderWith, layoutOf, sorted } from "./written-files.ts";

/** Midnight of 2026-01-01 in New York, which is five hours behind UTC in winter. */
const start = Date.UTC(2026, 0, 1, 5);
const minuteMs = 60_000;
const behindMs = 300 * minuteMs;

/** Rows of stays, each a minute after the one before, with what is to be read from them. */
function writtenStays(count: number) {
  const rows = ["stay,patient,disposition,admitted"];
  const lines: unknown[] = [];
  const refused: unknown[] = [];
  let line = 2;
  for (let number = 0; number < count; number++) {
    const admitted = start + number * minuteMs;
    const isUnreadable = number % 100 === 50;
    const time = isUnreadable ? "noon" : new Date(admitted - behindMs).toISOString().slice(0, 16);
    const isBroken = number % 7 === 0;
    rows.push(`S${number},00${number},${isBroken ? '"nursing\r\nhome"' : "home"},${time}`);
    if (isUnreadable) refused.push([line, "admitted"]);
    else lines.push([line, `S${number}`, `00${number}`, isBroken ? "nursing-home" : "home", admitted]);
    line += isBroken ? 2 : 1;
  }
  return { text: `${rows.join("\r\n")}\r\n`, lines, refused };
}

describe("readCsvFile", () => {
  it("reads a file of any name by the layout that it is given", async () => {
    const folder = folderWith({ "june.txt": "ward\nN1\n" });
    const { items } = await sorted(readCsvFile(join(folder, "june.txt"), layoutOf("wards.csv"), alderBay));
    expect(items).toMatchObject([{ type: "line", file: "wards.csv", line: 2, values: { ward: "N1" } }]);
  });

  it("reads 50,000 rows with the right values, physical lines and faults", async () => {
    const expected = writtenStays(50_000);
    const folder = folderWith({ "stays.csv": expected.text });
    const { lines, refused } = await sorted(readCsvFile(join(folder, "stays.csv"), layoutOf("stays.csv"), alderBay));
    expect(
      lines.map(({ line, values }) => {
        if (!("admitted" in values)) throw new Error("this is no stay");
        return [line, values.stay, values.patient, values.disposition, values.admitted];
      }),
    ).toEqual(expected.lines);
    expect(refused.map(({ line, faults }) => [line, faults[0]?.column])).toEqual(expected.refused);
    expect(refused).toHaveLength(500);
  });
});
