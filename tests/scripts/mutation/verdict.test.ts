import { expect, it } from "vitest";
import { chosenPart, verdictOf } from "../../../scripts/mutation/verdict.mjs";

const source = "const a = 1;\n  if (a > 0 && b) return;\n";
const mutant = (status: string, replacement: string) => ({
  status,
  replacement,
  mutatorName: "EqualityOperator",
  location: { start: { line: 2, column: 7 }, end: { line: 2, column: 12 } },
});
const report = (...mutants: ReturnType<typeof mutant>[]) => ({ files: { "src/a.ts": { source, mutants } } });
const name = "src/a.ts: if (a > 0 && b) return; [a > 0 -> a >= 0]";

it("counts what was killed or never ends of all that was tried, and nothing that was left out", () => {
  const all = ["Killed", "Timeout", "Survived", "NoCoverage", "Ignored"].map((status) => mutant(status, status));
  const { killed, total, unexplained } = verdictOf(report(...all), []);
  expect([killed, total, unexplained.map(({ replacement }) => replacement)]).toEqual([
    2,
    4,
    ["Survived", "NoCoverage"],
  ]);
});

it("takes a survivor that is listed with its reason, whatever its line number", () => {
  const explained = [{ reason: "a is never 0", mutants: [name] }];
  expect(verdictOf(report(mutant("Survived", "a >= 0")), explained)).toMatchObject({ unexplained: [], gone: [] });
  expect(verdictOf(report(mutant("Survived", "a < 0")), explained).unexplained).toHaveLength(1);
});

it("tells of a listed survivor that is none, unless its file was not looked at", () => {
  const explained = [{ reason: "a is never 0", mutants: [name, "src/other.ts: x [x -> y]"] }];
  expect(verdictOf(report(mutant("Killed", "a >= 0")), explained).gone).toEqual([name]);
});

it("of a run over some files only those are told", () => {
  const file = { source: "", mutants: [] };
  const all = { files: { "src/days/month.ts": file, "src/days/zone.ts": file, "src/criteria/abuti.ts": file } };
  const told = (...patterns: string[]) => Object.keys(chosenPart(all, patterns).files);
  expect(told()).toEqual(Object.keys(all.files));
  expect(told("src/days/zone.ts")).toEqual(["src/days/zone.ts"]);
  expect(told("src/days/**/*.ts")).toEqual(["src/days/month.ts", "src/days/zone.ts"]);
  expect(told("src/criteria/abuti.ts", "src/days/m*")).toEqual(["src/days/month.ts", "src/criteria/abuti.ts"]);
});
