import { type PolicyRule, policyRules, ruleSentence } from "../../../shared/policy-rules.ts";
import { dayText } from "../days/day-number.ts";
import type { PolicyInForce } from "./policy-in-force.ts";

/** Every rule of a policy in one sentence each, as flags print them. `wardName` names the ward whose policy it may be. */
export function policySentences(
  policy: PolicyInForce,
  wardName: string | null,
): { rule: PolicyRule; sentence: string }[] {
  return policyRules.map((rule) => ({ rule, sentence: policySentence(policy, rule, wardName) }));
}

/** One rule of a policy in a sentence that names the version, whose it is, and its first day. */
export function policySentence(policy: PolicyInForce, rule: PolicyRule, wardName: string | null): string {
  const { body, number, wardId, fromDay } = policy;
  const ward = wardId === null ? null : (wardName ?? String(wardId));
  return ruleSentence(body, rule, { number, ward, fromDay: fromDay === null ? null : dayText(fromDay) });
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
