import type { ReactNode } from "react";
import { inserter, insertionPlace, securement, urineAppearance } from "../../../../shared/catheter-words.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { insertionText } from "../../texts/insertion.ts";
import { appearanceText, inserterText, placeText, securementText } from "../../texts/record-labels.ts";
import { choicesOf } from "./choices.ts";
import type { InsertionDraft } from "./insertion-draft.ts";
import { help, Question, type StepProps } from "./step.tsx";

/** Urine, securement, and the place of the bag. */
export function StepAfter(step: StepProps): ReactNode {
  const { draft, change, faults } = step;
  const choose = (part: Partial<InsertionDraft["chosen"]>): void => change({ chosen: { ...draft.chosen, ...part } });
  return (
    <>
      <TextField
        pointer="/record/urineReturnedMl"
        label={insertionText("urine")}
        help={help(step, "urineReturnedMl")}
        faults={faults}
        inputMode="decimal"
        value={draft.urineReturnedMl}
        change={(urineReturnedMl) => change({ urineReturnedMl })}
      />
      <ChoiceField
        pointer="/record/urineAppearance"
        label={insertionText("appearance")}
        help={help(step, "urineAppearance")}
        faults={faults}
        choices={choicesOf(urineAppearance.options, appearanceText)}
        value={draft.chosen.urineAppearance ?? null}
        change={(one) => choose({ urineAppearance: one })}
      />
      <ChoiceField
        pointer="/record/securement"
        label={insertionText("securement")}
        help={help(step, "securement")}
        faults={faults}
        choices={choicesOf(securement.options, securementText)}
        value={draft.chosen.securement ?? null}
        change={(one) => choose({ securement: one })}
      />
      <Question step={step} field="bagBelowBladder" />
      <Question step={step} field="bagOffFloor" />
    </>
  );
}

/** Who did it, where, how the patient bore it, what they were told. */
export function StepPeople(step: StepProps): ReactNode {
  const { draft, change, faults } = step;
  const choose = (part: Partial<InsertionDraft["chosen"]>): void => change({ chosen: { ...draft.chosen, ...part } });
  return (
    <>
      <ChoiceField
        pointer="/record/insertedBy"
        label={insertionText("insertedBy")}
        help={help(step, "insertedBy")}
        faults={faults}
        choices={choicesOf(inserter.options, inserterText)}
        value={draft.chosen.insertedBy ?? null}
        change={(insertedBy) => choose({ insertedBy })}
      />
      <ChoiceField
        pointer="/record/insertedIn"
        label={insertionText("insertedIn")}
        help={help(step, "insertedIn")}
        faults={faults}
        choices={choicesOf(insertionPlace.options, placeText)}
        value={draft.chosen.insertedIn ?? null}
        change={(insertedIn) => choose({ insertedIn })}
      />
      <LongTextField
        pointer="/record/patientResponse"
        label={insertionText("response")}
        help={help(step, "patientResponse")}
        faults={faults}
        maxLength={500}
        value={draft.patientResponse}
        change={(patientResponse) => change({ patientResponse })}
      />
      <Question step={step} field="teachingGiven" />
    </>
  );
}
