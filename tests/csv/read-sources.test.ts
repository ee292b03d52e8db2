import { describe, expect, it } from "vitest";
import { readSources } from "../../src/csv/read-sources.ts";
import { alderBay, inPieces, sorted } from "./written-files.ts";

const texts = {
  "daily-counts.csv": "ward,day,patients,catheters\nN1,2026-02-01,12,3\n",
  "catheters.csv": "stay\n1\n",
  "moves.csv": "stay,patient,ward,from\n1,P1,N1,2026-02-01T10:00\n",
  "stays.csv": "stay,patient\n1,P1\n",
  "wards.csv": "ward\nN1\n",
};

const read = (files: Readonly<Record<string, string>>) =>
  sorted(
    readSources(
      Object.entries(files).map(([name, text]) => ({ name, open: () => inPieces(Buffer.from(text)) })),
      alderBay,
    ),
  );

describe("readSources", () => {
  it("reads the known files in a fixed order", async () => {
    const { items } = await read(texts);
    expect(items.map(({ file }) => file)).toEqual(Object.keys(texts).reverse());
    expect(items.every(({ type }) => type === "line")).toBe(true);
  });

  it("knows names in any case and with folders in front", async () => {
    const { items } = await read({ "june/Wards.CSV": "ward\nN1\n", "june\\STAYS.csv": "stay,patient\n1,P1\n" });
    expect(items).toMatchObject([
      { type: "line", file: "wards.csv" },
      { type: "line", file: "stays.csv" },
    ]);
  });

  it("tells of files that it does not read, in front of everything else", async () => {
    const { items } = await read({ "ward.csv": "", ".DS_Store": "", "wards.csv": "ward\nN1\n" });
    expect(items).toMatchObject([{ type: "notice", code: "file-unknown", file: "ward.csv" }, { type: "line" }]);
  });

  it("does not list thousands of other files", async () => {
    const others = Object.fromEntries(Array.from({ length: 1_000 }, (_, index) => [`scan-${index}.png`, ""]));
    const { notices } = await read({ ...others, "wards.csv": "ward\nN1\n" });
    expect(notices).toHaveLength(21);
    expect(notices[20]).toMatchObject({ file: null, detail: "980 more files are not known." });
  });

  it("does not choose between two files of one name, and reads the others", async () => {
    const { items } = await read({
      "wards.csv": "ward\nN1\n",
      "Wards.csv": "ward\nN2\n",
      "stays.csv": texts["stays.csv"],
    });
    expect(items).toMatchObject([
      { type: "refused", wholeFile: true, file: "wards.csv", faults: [{ code: "csv-file-repeated" }] },
      { type: "line", file: "stays.csv" },
    ]);
  });

  it("goes on with the next file after one that cannot be read", async () => {
    const { items } = await read({ "wards.csv": "PK\u0003\u0004", "stays.csv": texts["stays.csv"] });
    expect(items).toMatchObject([
      { type: "refused", wholeFile: true, file: "wards.csv", faults: [{ code: "csv-not-text" }] },
      { type: "line", file: "stays.csv" },
    ]);
  });

  it("tells at the end of identifiers that differ by zeros alone", async () => {
    const { items } = await read({ ...texts, "catheters.csv": "stay\n001\n" });
    expect(items.at(-1)).toMatchObject({ type: "notice", code: "zeros-lost" });
  });

  it.each<Record<string, string>>([{}, { "notes.csv": "stay,day,sign\n" }, { "notes.txt": "" }])(
    "refuses %j, which holds no known file",
    async (files) => {
      await expect(read(files)).rejects.toMatchObject({ code: "folder-unreadable" });
    },
  );
});
