import type { ReactNode } from "react";
import { indications } from "../../../../shared/catheter-words.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { Said } from "../../parts/said.tsx";
import { insertionText } from "../../texts/insertion.ts";
import { KindField } from "./kind-field.tsx";
import { help, Question, type StepProps } from "./step.tsx";

/** Order, identity, reason, hands: before anything is opened. */
export function StepBefore(step: StepProps): ReactNode {
  const { draft, change, faults, policy } = step;
  const outside = Object.entries(indications).filter(([code]) => !policy.indications.some((one) => one.code === code));
  return (
    <>
      <Question step={step} field="orderChecked" />
      <Question step={step} field="twoIdentifiersChecked" />
      <ChoiceField
        pointer="/indication"
        label={insertionText("indication")}
        help={help(step, "indication")}
        faults={faults}
        isTall
        choices={policy.indications.map(({ code, label }) => ({ value: code, label: <Said>{label}</Said> }))}
        value={draft.indication}
        change={(indication) => change({ indication })}
      />
      <details open={outside.some(([code]) => code === draft.indication)}>
        <summary>{insertionText("otherIndications")}</summary>
        <ChoiceField
          pointer="/indication-outside"
          label={insertionText("otherIndications")}
          faults={[]}
          isTall
          choices={outside.map(([value, label]) => ({ value, label: <Said>{label}</Said> }))}
          value={draft.indication}
          change={(indication) => change({ indication })}
        />
      </details>
      <Question step={step} field="handHygiene" />
    </>
  );
}

/** What keeps it sterile. */
export function StepTechnique(step: StepProps): ReactNode {
  const { draft, change, faults } = step;
  return (
    <>
      <Question step={step} field="packageIntactInDate" />
      <Question step={step} field="perinealCareDone" />
      <Question step={step} field="sterileTechniqueHeld" />
      <TextField
        pointer="/record/attempts"
        label={insertionText("attempts")}
        help={help(step, "attempts") ?? insertionText("attemptsHelp")}
        faults={faults}
        inputMode="numeric"
        value={draft.attempts}
        change={(attempts) => change({ attempts })}
      />
    </>
  );
}

/** What was put in, and when. */
export function StepCatheter(step: StepProps): ReactNode {
  const { draft, change, faults } = step;
  const number = { faults, inputMode: "decimal" } as const;
  return (
    <>
      <TimeField
        pointer="/insertedAt"
        label={insertionText("insertedAt")}
        faults={faults}
        value={draft.insertedAt}
        change={(insertedAt) => change({ insertedAt })}
      />
      <KindField faults={faults} value={draft.kind} change={(kind) => change({ kind })} />
      <TextField
        {...number}
        pointer="/sizeFr"
        label={insertionText("size")}
        help={help(step, "sizeFr")}
        unit={insertionText("unitFr")}
        value={draft.sizeFr}
        change={(sizeFr) => change({ sizeFr })}
      />
      <TextField
        {...number}
        pointer="/balloonMl"
        label={insertionText("balloon")}
        help={help(step, "balloonMl")}
        unit={insertionText("unitMl")}
        value={draft.balloonMl}
        change={(balloonMl) => change({ balloonMl })}
      />
    </>
  );
}
