import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { FindingInUrine } from "../../../src/domain/criteria/surveillance-timeline.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";

const patient = () =>
  timelineOf({
    findings: [[10, "physician-diagnosis"]],
    signs: [
      { day: 10, sign: "38.2" },
      { day: 10, sign: "urgency" },
    ],
  });

function outcomesWith(changed: Partial<FindingInUrine>): string[] {
  const timeline = patient();
  const findings = timeline.findings.map((one) => ({ ...one, ...changed }));
  return determine({ ...timeline, findings }, ecdc2017).map(({ outcome }) => outcome);
}

// ECDC HAI-Net ICU protocol 2.2 (2017), UTI-B: pyuria is 10 or more white blood cells per mm³.
it.each([
  [9, "not-met"],
  [10, "event"],
  [null, "event"],
])("pyuria of %s cells per mm³: %s", (cellsPerMm3, outcome) => {
  expect(outcomesWith({ finding: "pyuria", cellsPerMm3 })).toEqual([outcome]);
});

it("too few cells are no treatment either", () => {
  const few = timelineOf({ urine: [{ day: 10, grew: [["E. coli", "1000"]] }] });
  const findings = patient().findings.map((one) => ({ ...one, finding: "pyuria" as const, cellsPerMm3: 9 }));
  const determined = determine({ ...patient(), specimens: few.specimens, findings }, ecdc2017);
  expect(determined.map(({ outcome }) => outcome)).toEqual(["not-usable", "not-met"]);
});

it("a number of cells says nothing about another finding", () => {
  expect(outcomesWith({ finding: "gram-stain", cellsPerMm3: 1 })).toEqual(["event"]);
});

it("a finding that was looked for and absent starts nothing and supports nothing", () => {
  expect(outcomesWith({ present: false })).toEqual([]);
  const few = timelineOf({ urine: [{ day: 10, grew: [["E. coli", "1000"]] }] });
  const findings = patient().findings.map((one) => ({ ...one, present: false }));
  const determined = determine({ ...patient(), specimens: few.specimens, findings }, ecdc2017);
  expect(determined.map(({ outcome }) => outcome)).toEqual(["not-usable"]);
});
