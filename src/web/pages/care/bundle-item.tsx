import type { ReactNode } from "react";
import { type ItemState, itemState } from "../../../../shared/catheter-words.ts";
import type { PolicyItem } from "../../../../shared/policy.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { Said } from "../../parts/said.tsx";
import { careText } from "../../texts/care.ts";
import { itemStateText } from "../../texts/record-labels.ts";

/** One item of the bundle with the source that the policy names for it. */
export function BundleItem(props: {
  item: PolicyItem;
  value: ItemState | null;
  change: (state: ItemState | null) => void;
  faults: readonly FieldFault[];
}): ReactNode {
  const { item, value, change, faults } = props;
  const choices = [
    ...itemState.options.map((state) => ({ value: state as string, label: itemStateText(state) })),
    { value: "none", label: careText("notLooked") },
  ];
  return (
    <ChoiceField
      pointer={`/items/${item.code}`}
      label={<Said>{item.label}</Said>}
      help={<Said>{careText("item", { source: item.source })}</Said>}
      faults={faults}
      choices={choices}
      value={value ?? "none"}
      change={(one) => change(itemState.options.find((state) => state === one) ?? null)}
    />
  );
}
