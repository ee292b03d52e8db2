import { type ReactNode, useState } from "react";
import { fieldText } from "../../texts/fields.ts";
import { useSession } from "../session.tsx";
import { Field, type FieldProps } from "./field.tsx";

type TimeFieldProps = FieldProps & { readonly value: string; readonly change: (value: string) => void };

/**
 * A time on the facility's clocks, `2026-11-20T09:30`, with a touch for now. One that opens with a day alone,
 * `2026-11-20`, has its day and its hour apart: the hour is not recorded, and stays so until it is typed.
 */
export function TimeField(props: TimeFieldProps): ReactNode {
  const { pointer, label, faults, value, change } = props;
  const { time, now } = useSession();
  const [hasDayAlone] = useState(() => isDayAlone(value));
  const { help = hasDayAlone ? fieldText("hourNotRecorded") : undefined } = props;
  return (
    <Field {...{ pointer, label, help, faults }}>
      {(control) => (
        <span className="row">
          {hasDayAlone ? (
            <DayAndHour {...{ control, label, value, change }} />
          ) : (
            <input
              type="datetime-local"
              {...control}
              value={value}
              max={time.charted(now())}
              onChange={(event) => change(event.target.value)}
            />
          )}
          <button type="button" onClick={() => change(time.charted(now()))}>
            {fieldText("now")}
          </button>
        </span>
      )}
    </Field>
  );
}

/** Whether a charted time is a day without an hour. */
function isDayAlone(value: string): boolean {
  return value.length === "2026-11-20".length;
}

function DayAndHour(
  props: Pick<TimeFieldProps, "label" | "value" | "change"> & { readonly control: { readonly id: string } },
): ReactNode {
  const { control, label, value, change } = props;
  const { time, now } = useSession();
  const [day = "", hour = ""] = value.split("T");
  const hourId = `${control.id}-hour`;
  return (
    <>
      <input
        type="date"
        {...control}
        value={day}
        max={time.dayOf(now())}
        onChange={({ target }) => change(timeOf(target.value, hour))}
      />
      <span className="row">
        <label htmlFor={hourId}>
          <span className="unseen">{label}: </span>
          {fieldText("hour")}
        </label>
        <input type="time" id={hourId} value={hour} onChange={({ target }) => change(timeOf(day, target.value))} />
      </span>
    </>
  );
}

/** A day with its hour, or alone. */
function timeOf(day: string, hour: string): string {
  return day === "" || hour === "" ? day : `${day}T${hour}`;
}
