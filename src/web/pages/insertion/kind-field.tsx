import type { ReactNode } from "react";
import { type CatheterKind, catheterKind } from "../../../../shared/vocabulary.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { insertionText } from "../../texts/insertion.ts";
import { kindText } from "../../texts/words.ts";
import { choicesOf } from "./choices.ts";

/** Which kind of catheter it is. */
export function KindField(props: {
  faults: readonly FieldFault[];
  value: CatheterKind;
  change: (kind: CatheterKind) => void;
}): ReactNode {
  const { faults, value, change } = props;
  return (
    <SelectField
      pointer="/kind"
      label={insertionText("kind")}
      faults={faults}
      choices={choicesOf(catheterKind.options, kindText)}
      value={value}
      change={(kind) => kind && change(kind)}
    />
  );
}
