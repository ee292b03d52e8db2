import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readFolder } from "../../src/csv/read-folder.ts";
import { alderBay, folderWith, sorted } from "./written-files.ts";

const read = (folder: string) => sorted(readFolder(folder, alderBay));

describe("readFolder", () => {
  it("reads the known files of a folder and tells of the others in the order of the alphabet", async () => {
    const folder = folderWith({
      "stays.csv": "stay,patient\n1,P1\n",
      "b.txt": "",
      "a.txt": "",
      "wards.csv": "ward\nN1\n",
    });
    expect((await read(folder)).items).toMatchObject([
      { type: "notice", file: "a.txt" },
      { type: "notice", file: "b.txt" },
      { type: "line", file: "wards.csv" },
      { type: "line", file: "stays.csv" },
    ]);
  });

  it("refuses a folder where a file should be, and reads the other files", async () => {
    const folder = folderWith({ "stays.csv": "stay,patient\n1,P1\n" });
    mkdirSync(join(folder, "wards.csv"));
    expect((await read(folder)).items).toMatchObject([
      { type: "refused", file: "wards.csv", wholeFile: true, faults: [{ code: "csv-file-unreadable" }] },
      { type: "line", file: "stays.csv" },
    ]);
  });

  it("says why a folder cannot be read", async () => {
    const folder = folderWith({ "stays.csv": "stay,patient\n" });
    const cases: [string, RegExp][] = [
      [join(folder, "none"), /does not exist/],
      [join(folder, "stays.csv"), /is not a folder/],
      [folderWith({}), /is empty/],
      [folderWith({ "notes.txt": "" }), /none of the files wards\.csv, stays\.csv/],
    ];
    for (const [path, message] of cases) {
      await expect(read(path)).rejects.toMatchObject({
        code: "folder-unreadable",
        message: expect.stringMatching(message),
      });
    }
  });
});
