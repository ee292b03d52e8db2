import type { ReactNode } from "react";
import { policyRules } from "../../../../shared/policy-rules.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { StaleChoice } from "../../parts/form/stale-choice.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { policyText } from "../../texts/policy-rules.ts";
import { settingsText } from "../../texts/settings.ts";
import { RuleCard } from "./rule-card.tsx";
import { type RuleFieldsProps, ruleFields } from "./rule-fields.tsx";
import { type EditorProps, usePolicyForm } from "./use-policy-form.ts";

/** A new version: every rule with its fields and its sentence, then its first day and why. */
export function PolicyEditor(props: EditorProps): ReactNode {
  const { known, wardId } = props;
  const { draft, change, wasKept, sending, sentences, record, again, stale } = usePolicyForm(props);
  const fields: RuleFieldsProps = { draft, change, faults: faultsOf(sending), builtIn: known.builtIn };
  const isFirst = known.policies.every((policy) => policy.wardId !== wardId);
  return (
    <>
      {wasKept && <DraftNotice drop={again} />}
      <RecordForm
        {...{ sending }}
        record={() => record(draft.replaces)}
        button={policyText("record")}
        labelledBy="new-version"
        {...(stale ? { problem: <StaleChoice {...stale} /> } : {})}
      >
        {!isFirst && <Holds {...fields} />}
        {draft.holds === "own" &&
          policyRules.map((rule) => {
            const Fields = ruleFields[rule];
            return (
              <RuleCard key={rule} rule={rule} builtIn={known.builtIn} sentence={sentences[rule]}>
                <Fields {...fields} />
              </RuleCard>
            );
          })}
        <WhenAndWhy {...fields} isFirst={isFirst} />
      </RecordForm>
    </>
  );
}

function Holds({ draft, change, faults }: RuleFieldsProps): ReactNode {
  return (
    <ChoiceField
      pointer="/holds"
      label={policyText("holds")}
      faults={faults}
      choices={[
        { value: "own", label: policyText("holdsOwn") },
        { value: "above", label: policyText("holdsAbove") },
      ]}
      value={draft.holds}
      change={(holds) => change({ holds })}
      isTall
    />
  );
}

function WhenAndWhy({ draft, change, faults, isFirst }: RuleFieldsProps & { isFirst: boolean }): ReactNode {
  return (
    <>
      <TextField
        pointer="/fromDay"
        label={policyText("fromDay")}
        help={policyText(isFirst ? "fromHelpFirst" : "fromHelp")}
        faults={faults}
        type="date"
        value={draft.fromDay}
        change={(fromDay) => change({ fromDay })}
      />
      <LongTextField
        pointer="/reason"
        label={settingsText("reason")}
        faults={faults}
        value={draft.reason}
        change={(reason) => change({ reason })}
      />
    </>
  );
}
