import { describe, expect, it } from "vitest";
import { readHeader } from "../../src/csv/header.ts";
import { isBlank, LineReader } from "../../src/csv/read-line.ts";
import type { Row } from "../../src/csv/scan-row.ts";
import { alderBay, layoutOf } from "./written-files.ts";

const row = (raw: string, line = 2): Row => ({ line, cells: raw.split(","), raw, trouble: null });

function reader(file: Parameters<typeof layoutOf>[0], names: string) {
  const layout = layoutOf(file);
  const header = readHeader(row(names, 1), layout);
  if ("faults" in header) throw new Error("the test's header is wrong");
  return new LineReader(layout, header.columns, alderBay);
}

describe("LineReader", () => {
  it("reads values of every kind; what is empty or left out is null, or what it stands for", () => {
    const catheters = reader("catheters.csv", "stay,inserted,in_place_on_arrival,size_fr,indication");
    expect(catheters.read(row("0042,2026-02-01T10:00,Yes,16,"))).toEqual({
      type: "line",
      file: "catheters.csv",
      line: 2,
      raw: "0042,2026-02-01T10:00,Yes,16,",
      marks: [],
      values: {
        stay: "0042",
        catheter: null,
        kind: "indwelling-urethral",
        inserted: Date.UTC(2026, 1, 1, 15),
        removed: null,
        last_seen: null,
        in_place_on_arrival: true,
        indication: null,
        size_fr: 16,
        balloon_ml: null,
      },
    });
  });

  it("marks a repeated local hour at its column and at no later line", () => {
    const moves = reader("moves.csv", "stay,patient,ward,from,to");
    expect(moves.read(row("1,P1,N1,2025-11-01T10:00,2025-11-02T01:30"))).toMatchObject({
      marks: [{ kind: "repeated-hour", column: "to" }],
      values: { to: Date.UTC(2025, 10, 2, 5, 30) },
    });
    expect(moves.read(row("1,P1,N1,2025-11-02T03:00,"))).toMatchObject({ type: "line", marks: [] });
  });

  it("forgets the marks of a line that it refuses", () => {
    const moves = reader("moves.csv", "stay,patient,from,ward");
    expect(moves.read(row("1,P1,2025-11-02T01:30,"))).toMatchObject({ type: "refused" });
    expect(moves.read(row("1,P1,2025-11-02T03:00,N1"))).toMatchObject({ type: "line", marks: [] });
  });

  it("lists every fault of a line", () => {
    const counts = reader("daily-counts.csv", "catheters,patients,day,ward");
    expect(counts.read(row("-1,twelve,2026-02-30,"))).toMatchObject({
      type: "refused",
      line: 2,
      wholeFile: false,
      faults: [
        { code: "csv-number", column: "catheters", position: 1 },
        { code: "csv-number", column: "patients", position: 2 },
        { code: "day-unreadable", column: "day", position: 3 },
        { code: "csv-cell-empty", column: "ward", position: 4 },
      ],
    });
  });

  it("names the stay of a line that it refuses, where that much could be read", () => {
    const stays = reader("stays.csv", "patient,admitted,stay");
    expect(stays.read(row("P1,yesterday,S1"))).toMatchObject({ type: "refused", stay: "S1" });
    expect(stays.read(row("P1,yesterday,"))).toMatchObject({ type: "refused", stay: null });
    // With a cell too many or a quote out of place nobody knows which cell is which.
    expect(stays.read(row("P1,2025-11-02T03:00,S1,S2"))).toMatchObject({ type: "refused", stay: null });
    const trouble = { code: "csv-quote", detail: "It is out of place.", line: 2, cell: 2 } as const;
    expect(stays.read({ ...row("P1,2025-11-02T03:00,S1"), trouble })).toMatchObject({ type: "refused", stay: null });
    const counts = reader("daily-counts.csv", "ward,day,patients,catheters");
    expect(counts.read(row("N1,2026-03-01,twelve,0"))).toMatchObject({ type: "refused", stay: null });
  });

  it("names the column of a quote that is out of place, where there is one", () => {
    const wards = reader("wards.csv", "ward,name");
    const trouble = { code: "csv-quote", detail: "It is out of place.", line: 3 } as const;
    const faultIn = (cell: number) => wards.read({ ...row("a"), trouble: { ...trouble, cell } });
    expect(faultIn(2)).toMatchObject({ line: 2, faults: [{ line: 3, column: "name", position: 2 }] });
    expect(faultIn(3)).toMatchObject({ line: 2, faults: [{ line: 3, column: null, position: 3 }] });
  });

  it("counts the cells before it reads any", () => {
    const wards = reader("wards.csv", "ward,name");
    expect(wards.read(row("N1"))).toMatchObject({
      faults: [{ code: "csv-cell-count", detail: "The line has 1 cell and the header has 2." }],
    });
  });
});

describe("isBlank", () => {
  it("is true for white space and empty cells alone", () => {
    expect([row(""), row(" ,\u00a0,\t"), row(",0")].map(isBlank)).toEqual([true, true, false]);
    const trouble = { code: "csv-quote", detail: "It is out of place.", line: 2, cell: 1 } as const;
    expect(isBlank({ ...row(""), cells: [], trouble })).toBe(false);
  });
});
