import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const signs = [
  { day: 10, sign: "38.4" },
  { day: 10, sign: "urgency" },
] as const;
const outcome = (donorSupportFrom: number, edition = ecdc2017) =>
  determine(timelineOf({ findings: [[12, "pyuria"]], signs, donorSupportFrom }), edition)[0]?.outcome;

it("an edition without the rule reports an event whatever the support", () => {
  expect(outcome(1)).toBe("event");
});

it("an event without a specimen is held against its own date", () => {
  const both = { ...ecdc2017, others: us2024.others };
  expect([9, 10, 11].map((from) => outcome(from, both))).toEqual(["excluded", "excluded", "event"]);
});
