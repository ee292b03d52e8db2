import type { ReactNode } from "react";
import { removalReason } from "../../../../shared/catheter-words.ts";
import { ChoiceField, YesNoField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import type { Catheter } from "../../parts/patient/patient-record.ts";
import { insertionText } from "../../texts/insertion.ts";
import { removalReasonText } from "../../texts/record-labels.ts";
import { removalText } from "../../texts/removal.ts";
import { choicesOf } from "../insertion/choices.ts";
import type { RemovalDraft } from "./removal-draft.ts";

interface FieldsProps {
  readonly draft: RemovalDraft;
  readonly change: (part: Partial<RemovalDraft>) => void;
  readonly faults: readonly FieldFault[];
  readonly catheter: Catheter;
}

/** The fields of a removal in the order in which it is done. */
export function RemovalFields(props: FieldsProps): ReactNode {
  const { draft, change, faults, catheter } = props;
  const help = catheter.balloonMl === null ? undefined : removalText("balloonHelp", { amount: catheter.balloonMl });
  return (
    <>
      <When {...props} />
      <TextField
        pointer="/record/balloonWithdrawnMl"
        label={removalText("balloon")}
        help={help}
        faults={faults}
        inputMode="decimal"
        unit={insertionText("unitMl")}
        value={draft.balloonWithdrawnMl}
        change={(balloonWithdrawnMl) => change({ balloonWithdrawnMl })}
      />
      <YesNoField
        pointer="/record/catheterIntact"
        label={removalText("intact")}
        faults={faults}
        value={draft.catheterIntact}
        change={(catheterIntact) => change({ catheterIntact })}
      />
      <ChoiceField
        pointer="/record/reason"
        label={removalText("reason")}
        faults={faults}
        choices={choicesOf(removalReason.options, removalReasonText)}
        value={draft.reason ?? null}
        change={(reason) => change({ reason })}
      />
      <LongTextField
        pointer="/record/remark"
        label={removalText("remark")}
        faults={faults}
        maxLength={500}
        value={draft.remark}
        change={(remark) => change({ remark })}
      />
    </>
  );
}

function When({ draft, change, faults }: FieldsProps): ReactNode {
  return (
    <>
      <ChoiceField
        pointer="/when"
        label={removalText("when")}
        faults={[]}
        choices={[
          { value: "at", label: removalText("atTime") },
          { value: "between", label: removalText("foundOut") },
        ]}
        value={draft.how}
        change={(how) => change({ how })}
      />
      {draft.how === "at" ? (
        <TimeField
          pointer="/removedAt"
          label={removalText("removedAt")}
          faults={faults}
          value={draft.removedAt}
          change={(removedAt) => change({ removedAt })}
        />
      ) : (
        <>
          <TimeField
            pointer="/removedAfterAt"
            label={removalText("after")}
            faults={faults}
            value={draft.after}
            change={(after) => change({ after })}
          />
          <TimeField
            pointer="/removedBeforeAt"
            label={removalText("before")}
            faults={faults}
            value={draft.before}
            change={(before) => change({ before })}
          />
        </>
      )}
    </>
  );
}
