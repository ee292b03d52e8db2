import type { PolicyBody } from "../../../../shared/policy.ts";
import { type PolicyRule, policyRules, ruleSentence } from "../../../../shared/policy-rules.ts";
import type { Difference } from "../../parts/form/stale-choice.tsx";
import { policyText, ruleText } from "../../texts/policy-rules.ts";

/** The latest version as the server tells it. */
type Current = Readonly<Record<string, unknown>>;
type Sentences = Readonly<Record<PolicyRule, string | null>>;

/** What the person would set (null: the level above) and the version that somebody else set, rule by rule. */
export function policyDifferences(
  mine: { readonly sentences: Sentences | null; readonly fromDay: string },
  current: Current,
  ward: string | null,
): Difference[] {
  const fromDay = String(current.fromDay ?? "");
  const version = { number: Number(current.number ?? 0), ward, fromDay };
  const body = (current.body ?? null) as PolicyBody | null;
  const above = policyText("above");
  const rules = policyRules.map((rule) => ({
    label: ruleText(rule),
    mine: (mine.sentences ? mine.sentences[rule] : above) ?? policyText("printsLater"),
    theirs: body ? ruleSentence(body, rule, version) : above,
  }));
  return [{ label: policyText("fromDay"), mine: mine.fromDay, theirs: fromDay }, ...rules];
}
