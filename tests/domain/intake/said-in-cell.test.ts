import { describe, expect, it } from "vitest";
import { saidInCell } from "../../../src/domain/intake/said-in-cell.ts";
import { care, catheter, hour, move, review, sign, specimen, stay } from "./lines.ts";

const { zone } = care;

describe("what a cell of a refused line says", () => {
  it("is a time or a day, local to the facility", () => {
    expect(saidInCell(move(2, { from: hour(34.5) }), "from", zone)).toBe(' The cell says "1970-01-02T10:30".');
    expect(saidInCell(catheter(2, { removed: hour(48) }), "removed", zone)).toBe(' The cell says "1970-01-03T00:00".');
    expect(saidInCell(sign(2, { day: 1 }), "day", zone)).toBe(' The cell says "1970-01-02".');
    expect(saidInCell(review(2, { day: hour(36) }, true), "day", zone)).toBe(' The cell says "1970-01-02".');
  });

  it("is a word of a closed list", () => {
    expect(saidInCell(specimen(2, { status: "pending" }), "status", zone)).toBe(' The cell says "pending".');
  });

  it("is not repeated where it may speak of a patient, and is nothing where nothing is said", () => {
    expect(saidInCell(stay(2, { birth_date: 100 }), "birth_date", zone)).toBe("");
    for (const column of ["stay", "patient", "ward", "bed"]) expect(saidInCell(move(2, {}), column, zone)).toBe("");
    expect(saidInCell(specimen(2, { organism: "P33" }), "organism", zone)).toBe("");
    expect(saidInCell(move(2, { to: null }), "to", zone)).toBe("");
  });
});
