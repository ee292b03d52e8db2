import { describe, expect, it } from "vitest";
import { readFolder } from "../../src/csv/read-folder.ts";
import { alderBay, folderWith, sorted } from "./written-files.ts";

const read = (files: Readonly<Record<string, string | Uint8Array>>) => sorted(readFolder(folderWith(files), alderBay));
const values = (items: Awaited<ReturnType<typeof read>>) => items.lines.map((line) => line.values);

// 2026-02-01 is day 20485: 56 years of 365 days, 14 leap days (1972 to 2024) and 31 days of January.
const north = { ward: "N1", day: 20_485, patients: 12, catheters: 3 };
const plain = "ward,day,patients,catheters\nN1,2026-02-01,12,3\n";

/** UTF-16 with its mark, made here byte by byte. */
function utf16(text: string, isBigEndian: boolean): Uint8Array {
  const bytes = Buffer.from(`\uFEFF${text}`, "utf16le");
  return isBigEndian ? bytes.swap16() : bytes;
}

describe("files that are read right", () => {
  const alike: Record<string, string | Uint8Array> = {
    "as the layout says": plain,
    "with a UTF-8 mark": `\uFEFF${plain}`,
    "as UTF-16, little end first": utf16(plain, false),
    "as UTF-16, big end first": utf16(plain, true),
    "with semicolons": plain.replaceAll(",", ";"),
    "with tabs": plain.replaceAll(",", "\t"),
    "with CR LF": plain.replaceAll("\n", "\r\n"),
    "with lone CR": plain.replaceAll("\n", "\r"),
    "without a last line end": plain.trimEnd(),
    "with blank lines and the empty cells of a spreadsheet":
      "\n \nward,day,patients,catheters\n\n,,,\nN1,2026-02-01,12,3\n\n  \n",
    "with every cell quoted": '"ward","day","patients","catheters"\n"N1","2026-02-01","12","3"\n',
    "with white space around the cells": ' ward ,\tday, patients ,catheters\n N1 , "2026-02-01" ,12 ,\t3\t\n',
    "with the columns in another order and case": "Catheters,PATIENTS,Ward,dAy\n3,12,N1,2026-02-01\n",
    "with the delimiter named in front": `sep=;\n${plain.replaceAll(",", ";")}`,
  };
  it.each(Object.entries(alike))("a file %s", async (_, content) => {
    const found = await read({ "daily-counts.csv": content });
    expect(found.refused).toEqual([]);
    expect(values(found)).toEqual([north]);
  });

  it("keeps the physical lines right with line ends of three kinds and quoted line breaks", async () => {
    const content = 'ward,name\r\nN1,"North\r\nWing"\rN2,"a\rb\nc"\nN3,plain\r\n\r\nN4,last';
    const found = await read({ "wards.csv": content });
    expect(found.lines.map(({ line, values }) => [line, values])).toEqual([
      [2, expect.objectContaining({ ward: "N1", name: "North\nWing" })],
      [4, expect.objectContaining({ ward: "N2", name: "a\nb\nc" })],
      [7, expect.objectContaining({ ward: "N3" })],
      [9, expect.objectContaining({ ward: "N4" })],
    ]);
  });

  it("keeps leading zeros and says when identifiers differ only by them", async () => {
    const content = "stay,patient\n1,007\n2,7\n";
    const found = await read({ "stays.csv": content });
    expect(values(found)).toMatchObject([{ patient: "007" }, { patient: "7" }]);
    expect(found.notices).toMatchObject([{ code: "zeros-lost", detail: expect.stringContaining("stays.csv line 3") }]);
  });

  it("takes a header alone as no lines, with a notice", async () => {
    const found = await read({ "wards.csv": "ward,name\r\n" });
    expect(found.items).toMatchObject([{ type: "notice", code: "header-only", file: "wards.csv" }]);
  });
});
