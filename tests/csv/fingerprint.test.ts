import { describe, expect, it } from "vitest";
import { fingerprint } from "../../src/csv/fingerprint.ts";
import type { CsvLine } from "../../src/csv/items.ts";
import { readSources } from "../../src/csv/read-sources.ts";
import { alderBay, inPieces, sorted } from "./written-files.ts";

async function fingerprints(name: string, text: string): Promise<string[]> {
  const { lines, refused } = await sorted(readSources([{ name, open: () => inPieces(Buffer.from(text)) }], alderBay));
  expect(refused).toEqual([]);
  return lines.map(fingerprint);
}

const moves = "stay,patient,ward,from,absence\n007,P1,N1,2026-02-01T10:00,leave\n";

describe("fingerprint", () => {
  it("is short, stable text", async () => {
    const [first] = await fingerprints("moves.csv", moves);
    expect(first).toMatch(/^[\w-]{22}$/);
    expect(await fingerprints("moves.csv", moves)).toEqual([first]);
  });

  it.each([
    ["order, case and delimiter", "Absence;WARD;stay;from;patient\nleave;N1;007;2026-02-01T10:00;P1\n"],
    ["white space and quotes", 'stay,patient,ward,from,absence\n "007",P1 ,N1,  2026-02-01T10:00, LEAVE\r\n'],
    ["columns without values", "bed,stay,patient,ward,from,to,absence\n,007,P1,N1,2026-02-01T10:00,,leave\n"],
    ["the way in which the time is written", "stay,patient,ward,from,absence\n007,P1,N1,2026-02-01 15:00:00Z,leave\n"],
    ["the physical line", "\n\nstay,patient,ward,from,absence\n\n007,P1,N1,2026-02-01T10:00,leave\n"],
  ])("does not depend on %s", async (_, text) => {
    expect(await fingerprints("moves.csv", text)).toEqual(await fingerprints("moves.csv", moves));
  });

  it("does not depend on the order of a layout, nor on columns that a later one adds", () => {
    const line = { type: "line", line: 2, marks: [], raw: "" } as const;
    const counts = {
      ...line,
      file: "daily-counts.csv",
      values: { ward: "N1", day: 1, patients: 2, catheters: 3 },
    } as const;
    const reordered = { ...counts, values: { catheters: 3, patients: 2, day: 1, ward: "N1" } } as const;
    const added = { ...counts, values: { ...counts.values, note: null } } as const;
    expect([fingerprint(reordered), fingerprint(added)]).toEqual([fingerprint(counts), fingerprint(counts)]);
    const values = { stay: "1", patient: "P1", birth_date: null, sex: null, admitted: null, discharged: null };
    const stay = { ...line, file: "stays.csv", values: { ...values, disposition: null } } as const;
    const move = { ...line, file: "moves.csv", values: stay.values } as unknown as CsvLine;
    expect(fingerprint(move)).not.toBe(fingerprint(stay));
  });

  it("depends on every value, on its column and on the file", async () => {
    const others = [
      moves.replace("007", "7"),
      moves.replace("N1", "N2"),
      moves.replace("10:00", "10:01"),
      moves.replace("leave", "procedure"),
      moves.replace(",leave", ","),
      moves.replace("stay,patient", "patient,stay"),
    ];
    const all = [moves, ...others].map((text) => fingerprints("moves.csv", text));
    const wards = await Promise.all([
      fingerprints("wards.csv", "ward,name\nN1,a\n"),
      fingerprints("wards.csv", "ward,type\nN1,a\n"),
    ]);
    const stay = await fingerprints("stays.csv", "stay,patient\n007,P1\n");
    const catheter = await fingerprints("catheters.csv", "stay,catheter\n007,P1\n");
    const found = [...(await Promise.all(all)).flat(), ...wards.flat(), ...stay, ...catheter];
    expect(found).toHaveLength(11);
    expect(new Set(found).size).toBe(11);
  });
});
