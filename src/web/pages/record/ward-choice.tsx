import type { ReactNode } from "react";
import { listDestinations } from "../../../../shared/api/wards-now.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import type { FieldProps } from "../../parts/form/field.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { recordText } from "../../texts/patients.ts";

/** Chooses any ward of the facility, by its number as text; null while none was chosen. */
export function WardChoice<Value extends string | null>(
  props: Omit<FieldProps, "pointer"> & { readonly value: Value; readonly change: (value: string) => void },
): ReactNode {
  const { label, faults, value, change } = props;
  const asked = useAnswer(listDestinations, {});
  return (
    <ShowAnswer asked={asked} what={recordText("toWard")}>
      {({ wards }) => (
        <SelectField
          pointer="/toWardId"
          {...{ label, faults, value }}
          choices={wards.map(({ wardId, code, name }) => ({
            value: String(wardId),
            label: code === name ? code : `${code} ${name}`,
          }))}
          change={(chosen) => chosen !== null && change(chosen)}
          empty={recordText("choose")}
        />
      )}
    </ShowAnswer>
  );
}
