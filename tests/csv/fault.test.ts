import { describe, expect, it } from "vitest";
import { Problem, problems } from "../../shared/problems.ts";
import { faultAt, faultsOf, refusedFile } from "../../src/csv/fault.ts";

const place = { file: "moves.csv", line: 3, column: "from", position: 4 };

describe("faultAt", () => {
  it("adds the remedy of the code, and null for what is not known", () => {
    const remedy = problems["csv-empty"].remedy;
    const where = { file: "moves.csv", line: null, column: null, position: null };
    expect(faultAt({ file: "moves.csv" }, "csv-empty", "Nothing is in it.")).toEqual({
      ...where,
      code: "csv-empty",
      detail: "Nothing is in it.",
      remedy,
    });
  });
});

describe("faultsOf", () => {
  it("gives every fault of a problem its place", () => {
    const fault = (detail: string) => ({ code: "time-unreadable", pointer: "", detail }) as const;
    expect(faultsOf(place, new Problem(fault("One."), fault("Two.")))).toMatchObject([
      { ...place, detail: "One." },
      { ...place, detail: "Two." },
    ]);
  });

  it("throws a bug on", () => {
    const bug = new TypeError("a bug");
    expect(() => faultsOf(place, bug)).toThrow(bug);
  });
});

describe("refusedFile", () => {
  it("stands at the line of its first fault", () => {
    const faults = [faultAt(place, "csv-quote-open", "The quote is open.")];
    expect(refusedFile("moves.csv", faults)).toEqual({
      type: "refused",
      about: null,
      file: "moves.csv",
      line: 3,
      raw: "",
      stay: null,
      wholeFile: true,
      faults,
    });
  });
});
