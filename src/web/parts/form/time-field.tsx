import type { ReactNode } from "react";
import { fieldText } from "../../texts/fields.ts";
import { useSession } from "../session.tsx";
import { Field, type FieldProps } from "./field.tsx";

/** A time on the facility's clocks, `2026-11-20T09:30`, with a touch for now. */
export function TimeField(
  props: FieldProps & { readonly value: string; readonly change: (value: string) => void },
): ReactNode {
  const { pointer, label, help, faults, value, change } = props;
  const { time, now } = useSession();
  return (
    <Field {...{ pointer, label, help, faults }}>
      {(control) => (
        <span className="row">
          <input
            type="datetime-local"
            {...control}
            value={value}
            max={time.charted(now())}
            onChange={(event) => change(event.target.value)}
          />
          <button type="button" onClick={() => change(time.charted(now()))}>
            {fieldText("now")}
          </button>
        </span>
      )}
    </Field>
  );
}
