import type { InputHTMLAttributes, ReactNode } from "react";
import { Field, type FieldProps } from "./field.tsx";

type Passed = Pick<
  InputHTMLAttributes<HTMLInputElement>,
  "type" | "inputMode" | "maxLength" | "autoComplete" | "max" | "min"
>;

/** A line of text, a number, a day: whatever one input holds. `unit` stands behind it. */
export function TextField(
  props: FieldProps &
    Passed & { readonly value: string; readonly change: (value: string) => void; readonly unit?: string },
): ReactNode {
  const { pointer, label, help, faults, value, change, unit, ...passed } = props;
  return (
    <Field {...{ pointer, label, help, faults }}>
      {(control) => (
        <span className="row">
          <input
            autoComplete="off"
            {...passed}
            {...control}
            value={value}
            onChange={(event) => change(event.target.value)}
          />
          {unit !== undefined && <span>{unit}</span>}
        </span>
      )}
    </Field>
  );
}

/** Several lines of text. */
export function LongTextField(
  props: FieldProps & { readonly value: string; readonly change: (value: string) => void; readonly maxLength?: number },
): ReactNode {
  const { pointer, label, help, faults, value, change, maxLength } = props;
  return (
    <Field {...{ pointer, label, help, faults }}>
      {(control) => (
        <textarea
          {...control}
          // What stands in it is the person's own.
          data-said=""
          maxLength={maxLength}
          value={value}
          onChange={(event) => change(event.target.value)}
        />
      )}
    </Field>
  );
}
