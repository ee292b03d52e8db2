import { describe, expect, it } from "vitest";
import { readFolder } from "../../src/csv/read-folder.ts";
import { alderBay, folderWith, places, sorted } from "./written-files.ts";

const read = (files: Readonly<Record<string, string | Uint8Array>>) => sorted(readFolder(folderWith(files), alderBay));
const values = (items: Awaited<ReturnType<typeof read>>) => items.lines.map((line) => line.values);

// 2026-02-01 is day 20485: 56 years of 365 days, 14 leap days (1972 to 2024) and 31 days of January.
const north = { ward: "N1", day: 20_485, patients: 12, catheters: 3 };
const plain = "ward,day,patients,catheters\nN1,2026-02-01,12,3\n";

describe("lines that are refused by line and column, while the others are read", () => {
  const header = "stay,patient,ward,from,to\n";
  const good = "1,P1,N1,2026-02-01T10:00,2026-02-02T10:00\n";
  const cases: Record<string, { bad: string; faults: string[]; says: RegExp }> = {
    "a date that can be read in two ways": {
      bad: "2,P2,N1,01/02/2026,2026-02-02T10:00\n",
      faults: ["line 3, column from (4): csv-date-ambiguous"],
      says: /YYYY-MM-DDTHH:MM/,
    },
    "the serial number of a date": {
      bad: "2,P2,N1,45678.5,45679\n",
      faults: ["line 3, column from (4): csv-date-serial", "line 3, column to (5): csv-date-serial"],
      says: /in the spreadsheet/,
    },
    "too few cells": {
      bad: "2,P2,N1\n",
      faults: ["line 3, column from (4): csv-cell-count"],
      says: /3 cells.*has 5/,
    },
    "too many cells": {
      bad: "2,P2,N1,2026-02-01T10:00,,,\n",
      faults: ["line 3, column to (5): csv-cell-count"],
      says: /7 cells.*has 5/,
    },
    "an empty required cell and an unreadable time, both at once": {
      bad: ",P2,N1,yesterday,\n",
      faults: ["line 3, column stay (1): csv-cell-empty", "line 3, column from (4): time-unreadable"],
      says: /needs a value/,
    },
    "an identifier in scientific notation": {
      bad: "2,1.23E+11,N1,2026-02-01T10:00,\n",
      faults: ["line 3, column patient (2): csv-identifier-damaged"],
      says: /scientific/,
    },
    "a local time that did not exist": {
      bad: "2,P2,N1,2026-03-08T02:30,\n",
      faults: ["line 3, column from (4): time-does-not-exist"],
      says: /from 2026-03-08T01:59 to 2026-03-08T03:00/,
    },
    "a text that is too long": {
      bad: `2,${"P".repeat(201)},N1,2026-02-01T10:00,\n`,
      faults: ["line 3, column patient (2): csv-cell-too-long"],
      says: /200/,
    },
    "a control character": {
      bad: "2,P\u00072,N1,2026-02-01T10:00,\n",
      faults: ["line 3, column patient (2): csv-character"],
      says: /not seen/,
    },
    "a line break inside an identifier": {
      bad: '2,"P\n2",N1,2026-02-01T10:00,\n',
      faults: ["line 3, column patient (2): csv-character"],
      says: /line break/,
    },
    "a double quote inside a cell": {
      bad: '2,P"2,N1,2026-02-01T10:00,\n',
      faults: ["line 3, column patient (2): csv-quote"],
      says: /inside a cell/,
    },
    "text behind a closing quote": {
      bad: '2,"P"2,N1,2026-02-01T10:00,\n',
      faults: ["line 3, column patient (2): csv-quote"],
      says: /followed by text/,
    },
    "a quote that is never closed": {
      bad: '2,P2,"N1,2026-02-01T10:00,\n',
      faults: ["line 3, column ward (3): csv-quote-open"],
      says: /never closed/,
    },
  };
  it.each(Object.entries(cases))("%s", async (_, { bad, faults, says }) => {
    const after = "3,P3,N1,2026-02-01T10:00,\n";
    const found = await read({ "moves.csv": header + good + bad + after });
    expect(places(found.refused)).toEqual(faults);
    expect(found.refused).toMatchObject([{ file: "moves.csv", line: 3, raw: bad.trimEnd(), wholeFile: false }]);
    const [fault] = found.refused[0]?.faults ?? [];
    expect(`${fault?.detail} ${fault?.remedy}`).toMatch(says);
    expect(values(found)).toMatchObject([{ stay: "1" }, { stay: "3" }]);
  });

  it("refuses a Latin-1 byte by line, column and place in the cell", async () => {
    const content = Buffer.from("ward,name\nN1,North\nS1,S\xfcd\nE1,East\n", "latin1");
    const found = await read({ "wards.csv": content });
    expect(places(found.refused)).toEqual(["line 3, column name (2): csv-not-utf8"]);
    expect(found.refused[0]?.faults[0]?.detail).toContain("Character 2");
    expect(values(found)).toMatchObject([{ ward: "N1" }, { ward: "E1" }]);
  });

  it("never repeats a value in what it says", async () => {
    const content = `${header}Maple Rivera,Maple Rivera,Maple Rivera,Maple Rivera,Maple Rivera\n"Maple Rivera"x,,,,\n`;
    const found = await read({ "moves.csv": content });
    expect(found.refused).toHaveLength(2);
    expect(JSON.stringify(found.refused.map(({ faults }) => faults))).not.toContain("Rivera");
  });
});

describe("files that are refused as a whole", () => {
  const workbook = Buffer.from([0x50, 0x4b, 0x03, 0x04, 0x14, 0x00, 0x06, 0x00, 0x08, 0x00]);
  const oldWorkbook = Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0x00]);
  const cases: Record<string, { content: string | Uint8Array; faults: string[]; says: RegExp }> = {
    "without a byte": { content: "", faults: ["line null, column null (null): csv-empty"], says: /header line/ },
    "of blank lines alone": {
      content: "\n\r\n ",
      faults: ["line null, column null (null): csv-empty"],
      says: /header/,
    },
    "of a mark alone": { content: "\uFEFF", faults: ["line null, column null (null): csv-empty"], says: /header/ },
    "that is a renamed workbook": {
      content: workbook,
      faults: ["line null, column null (null): csv-not-text"],
      says: /workbook.*save it as "CSV UTF-8"/,
    },
    "that is a renamed workbook of the old form": {
      content: oldWorkbook,
      faults: ["line null, column null (null): csv-not-text"],
      says: /workbook.*save it as "CSV UTF-8"/,
    },
    "with zero bytes": {
      content: Buffer.from("ward,name\n", "utf16le"),
      faults: ["line null, column null (null): csv-not-text"],
      says: /zero bytes/,
    },
    "without a header": {
      content: "N1,North\nN2,South\n",
      faults: ["line 1, column null (null): csv-header-missing"],
      says: /The columns of wards.csv are: ward, name, type, setting, beds, opened, closed/,
    },
    "with a repeated, an unknown, an unnamed and a missing column": {
      content: "\nname,Name,wing,\nNorth,North,a,\n",
      faults: [
        "line 2, column name (2): csv-column-repeated",
        "line 2, column null (3): csv-column-unknown",
        "line 2, column null (4): csv-column-unknown",
        "line 2, column ward (null): csv-column-missing",
      ],
      says: /column 1 and as column 2/,
    },
    "with an open quote in the header": {
      content: 'ward,"name\nN1,North\n',
      faults: ["line 1, column null (2): csv-quote-open"],
      says: /never closed/,
    },
    "with a line that does not end": {
      content: `ward\nN1\n${"x".repeat(300_000)}`,
      faults: ["line 3, column null (null): csv-line-too-long"],
      says: /20000 characters/,
    },
  };
  it.each(Object.entries(cases))("a file %s", async (_, { content, faults, says }) => {
    const found = await read({ "wards.csv": content, "daily-counts.csv": plain });
    expect(places(found.refused)).toEqual(faults);
    expect(found.refused).toMatchObject([{ file: "wards.csv", wholeFile: true }]);
    const [fault] = found.refused[0]?.faults ?? [];
    expect(`${fault?.detail} ${fault?.remedy}`).toMatch(says);
    expect(values(found).at(-1)).toEqual(north);
  });
});
