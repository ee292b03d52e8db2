import { expect, it } from "vitest";
import type { PolicyBody } from "../../../shared/policy.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { policyFaults } from "../../../src/domain/policy/policy-faults.ts";

const found = (changes: Partial<PolicyBody>) =>
  policyFaults({ ...defaultPolicy, ...changes }).map(({ code, pointer }) => [code, pointer]);
const item = (code: string) => ({ code, label: code, source: "our own" });

it("the policy that is built in does not contradict itself", () => {
  expect(found({})).toEqual([]);
});

it("a list that names something twice does, at the later place", () => {
  expect(found({ indications: [item("a"), item("b"), item("a"), item("a")], thresholdByIndication: { a: 3 } })).toEqual(
    [
      ["policy-contradicts", "/body/indications/2"],
      ["policy-contradicts", "/body/indications/3"],
    ],
  );
  expect(found({ bundle: [item("b"), item("b")] })).toEqual([["policy-contradicts", "/body/bundle/1"]]);
  expect(found({ requiredFields: ["sizeFr", "attempts", "sizeFr"] })).toEqual([
    ["policy-contradicts", "/body/requiredFields/2"],
  ]);
});

it("a threshold for an indication that is not accepted does", () => {
  const pointer = "/body/thresholdByIndication/other";
  expect(found({ thresholdByIndication: { other: 3, perioperative: 2 } })).toEqual([["policy-contradicts", pointer]]);
  // What every object answers to is no indication.
  expect(found({ thresholdByIndication: { constructor: 3 } as unknown as Record<string, number> })).toHaveLength(1);
});

it("all of it is told at once", () => {
  const changes = { bundle: [item("b"), item("b")], requiredFields: ["attempts", "attempts"] as const };
  expect(
    found({ ...changes, requiredFields: [...changes.requiredFields], thresholdByIndication: { other: 1 } }),
  ).toHaveLength(3);
});
