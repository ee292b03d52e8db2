import { type ReactNode, useId } from "react";
import { type PolicyRule, ruleSentence } from "../../../../shared/policy-rules.ts";
import { Said } from "../../parts/said.tsx";
import { policyText, ruleText } from "../../texts/policy-rules.ts";
import { settingsText } from "../../texts/settings.ts";
import type { Policies } from "./policy-versions.tsx";

/** One rule: its fields, what is built in and where that comes from, and the sentence that it will print. */
export function RuleCard(props: {
  rule: PolicyRule;
  builtIn: Policies["builtIn"];
  /** Null while the fields cannot be read. */
  sentence: string | null;
  children: ReactNode;
}): ReactNode {
  const { rule, builtIn, sentence, children } = props;
  const id = useId();
  return (
    <section className="card rule-card" aria-labelledby={id}>
      <h3 id={id} className="first-heading">
        {ruleText(rule)}
      </h3>
      {children}
      <dl className="facts">
        <dt>{policyText("prints")}</dt>
        <dd>{sentence === null ? <em>{policyText("printsLater")}</em> : <Said>{sentence}</Said>}</dd>
        <dt>{policyText("builtIn")}</dt>
        <dd>
          <Said>{ruleSentence(builtIn.body, rule, { number: 0, ward: null, fromDay: null })}</Said>{" "}
          <span className="small">
            <Said>{settingsText("source", { source: builtIn.sources[rule] })}</Said>
          </span>
        </dd>
      </dl>
    </section>
  );
}
