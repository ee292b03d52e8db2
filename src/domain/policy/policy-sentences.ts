import { indications as commonIndications } from "../../../shared/catheter-words.ts";
import type { PolicyBody } from "../../../shared/policy.ts";
import { recordFields } from "../../../shared/records.ts";
import { dayText } from "../days/day-number.ts";
import type { PolicyInForce } from "./policy-in-force.ts";

const rules = {
  review: ({ reviewFromDay, reviewDueAt }) =>
    `a catheter is reviewed every day from eligibility day ${reviewFromDay} on, by ${reviewDueAt}`,
  threshold: thresholdText,
  confirmation: ({ confirmationHours }) =>
    `a catheter that nobody has seen for ${hours(confirmationHours)} is doubtful`,
  indications: ({ indications }) => `a catheter is accepted for: ${list(indications)}`,
  "required-record": ({ requiredFields }) =>
    requiredFields.length === 0
      ? "the record of an insertion may leave everything open but its time"
      : `the record of an insertion says: ${requiredFields.map((field) => recordFields[field]).join("; ")}`,
  bundle: ({ bundle }) => `a care check looks at: ${list(bundle)}`,
  "bed-hold": ({ bedHoldHours }) =>
    bedHoldHours === null
      ? "a bed may be held during a procedure without a limit"
      : `a bed that is held during a procedure for more than ${hours(bedHoldHours)} is listed`,
} as const satisfies Record<string, (body: PolicyBody) => string>;

/** The rules of a policy. */
export type PolicyRule = keyof typeof rules;

/** Every rule of a policy in one sentence each, as flags print them. `wardName` names the ward whose policy it may be. */
export function policySentences(
  policy: PolicyInForce,
  wardName: string | null,
): { rule: PolicyRule; sentence: string }[] {
  return (Object.keys(rules) as PolicyRule[]).map((rule) => ({
    rule,
    sentence: policySentence(policy, rule, wardName),
  }));
}

/** One rule of a policy in a sentence that names the version, whose it is, and its first day. */
export function policySentence(policy: PolicyInForce, rule: PolicyRule, wardName: string | null): string {
  return `${versionText(policy, wardName)}: ${rules[rule](policy.body)}.`;
}

/** A policy as a flag names it: its version, whose it is, and the sentence of the rule behind the flag. */
export interface NamedPolicy {
  readonly sentence: string;
  readonly number: number;
  readonly wardId: number | null;
}

/** The policy behind a flag, by the rule that raised it. */
export function namedPolicy(
  policy: PolicyInForce,
  rule: PolicyRule,
  wardName: (wardId: number) => string,
): NamedPolicy {
  const { number, wardId } = policy;
  return { sentence: policySentence(policy, rule, wardId === null ? null : wardName(wardId)), number, wardId };
}

/** What an indication is called: by the policy, else in the common list. */
export function indicationLabel({ indications }: PolicyBody, code: string): string {
  const own = indications.find((listed) => listed.code === code);
  if (own) return own.label;
  // Own words only: "constructor" is a code like any other.
  return Object.hasOwn(commonIndications, code) ? commonIndications[code as keyof typeof commonIndications] : code;
}

function versionText({ number, wardId, fromDay }: PolicyInForce, wardName: string | null): string {
  if (number === 0 || fromDay === null) return "Built-in policy";
  const whose = wardId === null ? "Policy of the facility" : `Policy of ward ${wardName ?? wardId}`;
  return `${whose}, version ${number}, from ${dayText(fromDay)}`;
}

function thresholdText(body: PolicyBody): string {
  const { thresholdDays, thresholdByIndication } = body;
  const others = Object.entries(thresholdByIndication).map(
    ([code, days]) => `after ${daysText(days)} with the indication "${indicationLabel(body, code)}"`,
  );
  const general = thresholdDays === null ? [] : [`after ${daysText(thresholdDays)}`];
  const all = [...general, ...others];
  if (all.length === 0) return "no number of days puts a catheter past a threshold";
  const past = `a catheter is past the threshold ${all.join(", ")}`;
  return thresholdDays === null ? `${past}; other indications have no threshold` : past;
}

function daysText(days: number): string {
  return `eligibility day ${days}`;
}

function hours(count: number): string {
  return count === 1 ? "1 hour" : `${count} hours`;
}

function list(items: readonly { readonly label: string }[]): string {
  return items.map(({ label }) => label).join("; ");
}
