import type { ReactNode } from "react";
import { fieldText } from "../../texts/fields.ts";
import { useFieldIds } from "./faults.ts";
import { Field, FieldGroup, type FieldProps } from "./field.tsx";

/** One of several; `label` is what a person reads. */
export interface Choice<T extends string> {
  readonly value: T;
  readonly label: ReactNode;
}

/** One of a few choices, all of them to be seen. */
export function ChoiceField<T extends string>(
  props: FieldProps & {
    readonly choices: readonly Choice<T>[];
    readonly value: T | null;
    readonly change: (value: T) => void;
    readonly isTall?: boolean;
  },
): ReactNode {
  const { choices, value, change, isTall = false, ...field } = props;
  const name = useFieldIds()(field.pointer);
  return (
    <FieldGroup {...field}>
      <div className={isTall ? "choices tall" : "choices"}>
        {choices.map((choice) => (
          <label className="choice" key={choice.value}>
            <input type="radio" name={name} checked={choice.value === value} onChange={() => change(choice.value)} />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
    </FieldGroup>
  );
}

/** Yes, no, or not recorded: what nobody looked at is never a no. */
export function YesNoField(
  props: FieldProps & { readonly value: boolean | null; readonly change: (value: boolean | null) => void },
): ReactNode {
  const { value, change, ...field } = props;
  const choices = [
    { value: "yes", label: fieldText("yes") },
    { value: "no", label: fieldText("no") },
    { value: "none", label: fieldText("notRecorded") },
  ] as const;
  const chosen = value === null ? "none" : value ? "yes" : "no";
  return (
    <ChoiceField
      {...field}
      choices={choices}
      value={chosen}
      change={(one) => change(one === "none" ? null : one === "yes")}
    />
  );
}

/** One of many. `empty` is the words for none chosen yet; without it one is always chosen. */
export function SelectField<T extends string>(
  props: FieldProps & {
    readonly choices: readonly { readonly value: T; readonly label: string }[];
    readonly value: T | null;
    readonly change: (value: T | null) => void;
    readonly empty?: string;
  },
): ReactNode {
  const { choices, value, change, empty, ...field } = props;
  const find = (text: string): T | null => choices.find((choice) => choice.value === text)?.value ?? null;
  return (
    <Field {...field}>
      {(control) => (
        <select {...control} value={value ?? ""} onChange={(event) => change(find(event.target.value))}>
          {empty !== undefined && <option value="">{empty}</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
