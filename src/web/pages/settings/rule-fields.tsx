import type { ReactNode } from "react";
import { indications as commonIndications } from "../../../../shared/catheter-words.ts";
import type { PolicyItem } from "../../../../shared/policy.ts";
import type { PolicyRule } from "../../../../shared/policy-rules.ts";
import { type RecordField, recordFields } from "../../../../shared/records.ts";
import type { FieldFault } from "../../parts/form/faults.ts";
import { FieldGroup } from "../../parts/form/field.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { policyText } from "../../texts/policy-rules.ts";
import { fieldLabel } from "../../texts/record-labels.ts";
import { ItemList } from "./item-list.tsx";
import type { PolicyDraft } from "./policy-draft.ts";
import type { Policies } from "./policy-versions.tsx";

/** What the fields of a rule are given. */
export interface RuleFieldsProps {
  readonly draft: PolicyDraft;
  readonly change: (part: Partial<PolicyDraft>) => void;
  readonly faults: readonly FieldFault[];
  readonly builtIn: Policies["builtIn"];
}

/** The fields of each rule, in the order in which the rules are printed. */
export const ruleFields: Readonly<Record<PolicyRule, (props: RuleFieldsProps) => ReactNode>> = {
  review: (props) => (
    <>
      <OneField {...props} name="reviewFromDay" />
      <OneField {...props} name="reviewDueAt" help={policyText("hourHelp")} />
    </>
  ),
  threshold: ThresholdFields,
  confirmation: (props) => <OneField {...props} name="confirmationHours" unit={policyText("unitHours")} />,
  indications: ({ draft, change, faults, builtIn }) => (
    <ItemList
      pointer="/body/indications"
      faults={faults}
      items={draft.indications}
      change={(indications) => change({ indications })}
      known={[...builtIn.body.indications, ...otherIndications(builtIn.body.indications)]}
    />
  ),
  "required-record": RequiredFields,
  bundle: ({ draft, change, faults, builtIn }) => (
    <ItemList
      pointer="/body/bundle"
      faults={faults}
      items={draft.bundle}
      change={(bundle) => change({ bundle })}
      known={builtIn.body.bundle}
    />
  ),
  "bed-hold": (props) => (
    <OneField {...props} name="bedHoldHours" help={policyText("bedHoldHelp")} unit={policyText("unitHours")} />
  ),
};

type Single = "reviewFromDay" | "reviewDueAt" | "thresholdDays" | "confirmationHours" | "bedHoldHours";

function OneField(props: RuleFieldsProps & { name: Single; help?: string; unit?: string }): ReactNode {
  const { draft, change, faults, name, help, unit } = props;
  return (
    <TextField
      pointer={`/body/${name}`}
      label={policyText(name)}
      faults={faults}
      inputMode={name === "reviewDueAt" ? "text" : "numeric"}
      value={draft[name]}
      change={(value) => change({ [name]: value })}
      {...(help === undefined ? {} : { help })}
      {...(unit === undefined ? {} : { unit })}
    />
  );
}

function ThresholdFields(props: RuleFieldsProps): ReactNode {
  const { draft, change, faults } = props;
  return (
    <>
      <OneField {...props} name="thresholdDays" help={policyText("thresholdHelp")} />
      <div className="thresholds">
        {draft.indications.map((item) => (
          <TextField
            key={item.key}
            pointer={`/body/thresholdByIndication/${item.code}`}
            label={policyText("thresholdFor", { label: item.label })}
            help={policyText("thresholdForHelp")}
            faults={faults}
            inputMode="numeric"
            value={item.threshold}
            change={(threshold) =>
              change({ indications: draft.indications.map((one) => (one === item ? { ...one, threshold } : one)) })
            }
          />
        ))}
      </div>
    </>
  );
}

function RequiredFields({ draft, change, faults }: RuleFieldsProps): ReactNode {
  const { requiredFields } = draft;
  const toggle = (field: RecordField, isOn: boolean): void =>
    change({ requiredFields: isOn ? [...requiredFields, field] : requiredFields.filter((one) => one !== field) });
  return (
    <FieldGroup pointer="/body/requiredFields" label={policyText("requiredFields")} faults={faults}>
      <div className="choices">
        {(Object.keys(recordFields) as RecordField[]).map((field) => (
          <label className="choice" key={field}>
            <input
              type="checkbox"
              checked={requiredFields.includes(field)}
              onChange={(event) => toggle(field, event.target.checked)}
            />
            <span>{fieldLabel(field)}</span>
          </label>
        ))}
      </div>
    </FieldGroup>
  );
}

/** The common indications that the built-in policy does not accept; where the unit has them from is for it to say. */
function otherIndications(accepted: readonly PolicyItem[]): PolicyItem[] {
  return Object.entries(commonIndications)
    .filter(([code]) => accepted.every((item) => item.code !== code))
    .map(([code, label]) => ({ code, label, source: "" }));
}
