import type { ReactNode } from "react";
import type { PolicyBody } from "../../../../shared/policy.ts";
import type { RecordField } from "../../../../shared/records.ts";
import { YesNoField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { insertionText } from "../../texts/insertion.ts";
import { fieldLabel } from "../../texts/record-labels.ts";
import type { InsertionDraft } from "./insertion-draft.ts";

/** What every step is given. */
export interface StepProps {
  readonly draft: InsertionDraft;
  readonly change: (part: Partial<InsertionDraft>) => void;
  readonly faults: readonly FieldFault[];
  readonly policy: PolicyBody;
}

type YesNo = {
  [Key in keyof Required<InsertionDraft["chosen"]>]: Required<InsertionDraft["chosen"]>[Key] extends boolean
    ? Key
    : never;
}[keyof Required<InsertionDraft["chosen"]>];

/** That the policy asks for a field, when it does. */
export function help({ policy, draft }: StepProps, field: RecordField): string | undefined {
  const asksHere = draft.kind === "indwelling-urethral" && policy.requiredFields.includes(field);
  return asksHere ? insertionText("required") : undefined;
}

/** A question of the record that is answered with yes or no, or not at all. */
export function Question({ step, field }: { step: StepProps; field: YesNo }): ReactNode {
  const { draft, change, faults } = step;
  return (
    <YesNoField
      pointer={`/record/${field}`}
      label={fieldLabel(field)}
      help={help(step, field)}
      faults={faults}
      value={draft.chosen[field] ?? null}
      change={(value) => change({ chosen: { ...draft.chosen, [field]: value ?? undefined } })}
    />
  );
}
