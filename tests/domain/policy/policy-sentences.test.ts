import { describe, expect, it } from "vitest";
import type { PolicyBody } from "../../../shared/policy.ts";
import { indicationLabel, type PolicyRule } from "../../../shared/policy-rules.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { builtInPolicy, type PolicyInForce } from "../../../src/domain/policy/policy-in-force.ts";
import { policySentence, policySentences } from "../../../src/domain/policy/policy-sentences.ts";
import { dayOf } from "../../reference/day-text.ts";

const facility: PolicyInForce = { body: defaultPolicy, number: 3, wardId: null, fromDay: dayOf("2026-03-01") };

/** The sentence of a rule without its beginning, after some of the built-in policy was changed. */
function ruleText(rule: PolicyRule, changes: Partial<PolicyBody>): string {
  const sentence = policySentence({ ...builtInPolicy, body: { ...defaultPolicy, ...changes } }, rule, null);
  return sentence.replace("Built-in policy: ", "");
}

describe("the sentences of a policy", () => {
  it("say every rule once, in plain words", () => {
    expect(policySentences(builtInPolicy, "4 East")).toEqual([
      {
        rule: "review",
        sentence: "Built-in policy: a catheter is reviewed every day from eligibility day 2 on, by 12:00.",
      },
      {
        rule: "threshold",
        sentence:
          'Built-in policy: a catheter is past the threshold after eligibility day 2 with the indication "Perioperative use for selected surgery"; other indications have no threshold.',
      },
      {
        rule: "confirmation",
        sentence: "Built-in policy: a catheter not confirmed in place for 48 hours is doubtful.",
      },
      {
        rule: "indications",
        sentence: `Built-in policy: a catheter is accepted for: ${defaultPolicy.indications.map((i) => i.label).join("; ")}.`,
      },
      {
        rule: "required-record",
        sentence:
          "Built-in policy: the record of an insertion says: Size; Balloon volume; Indication; Patient response; Urine returned (mL); Urine appearance; Inserted by; Where it was inserted.",
      },
      {
        rule: "bundle",
        sentence: `Built-in policy: a maintenance bundle check covers: ${defaultPolicy.bundle.map((item) => item.label).join("; ")}.`,
      },
      { rule: "bed-hold", sentence: "Built-in policy: a bed may be held during a procedure without a limit." },
    ]);
  });

  it.each([
    { policy: facility, name: "4 East", begins: "Policy of the facility, version 3, from 2026-03-01: a catheter " },
    {
      policy: { ...facility, wardId: 7 },
      name: "4 East",
      begins: "Policy of unit 4 East, version 3, from 2026-03-01: ",
    },
    { policy: { ...facility, wardId: 7 }, name: null, begins: "Policy of unit 7, version 3, from 2026-03-01: " },
  ])("name whose policy it is, its version and first day: $begins", ({ policy, name, begins }) => {
    for (const { sentence } of policySentences(policy, name))
      expect(sentence).toContain(begins.replace("a catheter ", ""));
    expect(policySentence(policy, "review", name).startsWith(begins)).toBe(true);
  });

  it.each<[PolicyRule, Partial<PolicyBody>, string]>([
    [
      "review",
      { reviewFromDay: 3, reviewDueAt: "09:30" },
      "a catheter is reviewed every day from eligibility day 3 on, by 09:30.",
    ],
    ["threshold", { thresholdByIndication: {} }, "no number of days puts a catheter past a threshold."],
    [
      "threshold",
      { thresholdDays: 5, thresholdByIndication: {} },
      "a catheter is past the threshold after eligibility day 5.",
    ],
    [
      "threshold",
      { thresholdDays: 5, thresholdByIndication: { "end-of-life": 30, incontinence: 1 } },
      'a catheter is past the threshold after eligibility day 5, after eligibility day 30 with the indication "Comfort at the end of life", after eligibility day 1 with the indication "Incontinence care".',
    ],
    ["confirmation", { confirmationHours: 1 }, "a catheter not confirmed in place for 1 hour is doubtful."],
    ["required-record", { requiredFields: [] }, "the record of an insertion may leave everything open but its time."],
    ["bed-hold", { bedHoldHours: 12 }, "a bed that is held during a procedure for more than 12 hours is listed."],
  ])("of %s with %o", (rule, changes, sentence) => {
    expect(ruleText(rule, changes)).toBe(sentence);
  });
});

describe("what an indication is called", () => {
  it("is said by the policy, else by the common list, else it is its code", () => {
    const own = { code: "end-of-life", label: "Palliative care", source: "our unit" };
    const body = { ...defaultPolicy, indications: [own] };
    expect(indicationLabel(body, "end-of-life")).toBe("Palliative care");
    expect(indicationLabel(body, "other")).toBe("Another reason");
    expect(indicationLabel(body, "own-reason-of-before")).toBe("own-reason-of-before");
    expect(indicationLabel(body, "constructor")).toBe("constructor");
  });
});
