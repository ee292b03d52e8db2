import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

// An edition that starts from findings too, with the criteria of the United States.
const mixed = { ...us2024, anchors: ecdc2017.anchors };

it("no criterion of the United States is met by a finding without a usable culture", () => {
  const timeline = timelineOf({
    ageYears: 0,
    catheters: [[2, null]],
    findings: [[10, "pyuria"]],
    signs: [{ day: 10, sign: "38.4" }],
    blood: [{ day: 10, grew: [["Escherichia coli", null]] }],
  });
  const [found] = determine(timeline, mixed);
  const told = found?.derivation.map(({ rule, status, sentence }) => [rule, status, sentence.split(": ")[1]]);
  expect(told?.slice(1)).toEqual(
    ["suti-1a", "suti-1b", "suti-2", "abuti"].map((rule) => [rule, "failed", "there is no usable culture."]),
  );
});
