import { describe, expect, it } from "vitest";
import { startOf } from "../../src/csv/start.ts";
import { layoutOf } from "./written-files.ts";

const start = (block: string) => startOf(block, layoutOf("moves.csv"));

describe("startOf", () => {
  it.each([
    ["stay,patient,ward,from\n", ",", 0, 1],
    ["stay;patient;ward;from\n", ";", 0, 1],
    ["Stay\tPATIENT\tward\tfrom", "\t", 0, 1],
    ['"stay";"patient";"ward, or bed";"from"\n', ";", 0, 1],
    ["stay;patient;to,from\n", ";", 0, 1],
    ["\r\n \n,,,\nstay,patient", ",", 8, 4],
    ["sep=;\r\nstay;patient", ";", 7, 2],
    ['"sep=\t"\n\nstay\tpatient', "\t", 9, 3],
    ["stay", ",", 0, 1],
    ["", ",", 0, 1],
    ["1;P1;N1", ",", 0, 1],
  ])("finds the delimiter and the header of %j", (block, delimiter, skipped, line) => {
    expect(start(block)).toEqual({ delimiter, skipped, line });
  });
});
