import type { ReactNode } from "react";
import { Said } from "../said.tsx";
import { type FieldFault, faultsAt, useFieldIds } from "./faults.ts";

/** What every field is given. */
export interface FieldProps {
  /** The JSON pointer of the field in what is sent: faults of the server come back under it. */
  readonly pointer: string;
  readonly label: ReactNode;
  readonly help?: ReactNode;
  readonly faults: readonly FieldFault[];
}

/** What a control needs to be told apart and to have its help and faults read with it. */
export interface ControlProps {
  readonly id: string;
  readonly "aria-invalid": boolean;
  readonly "aria-describedby": string | undefined;
}

/** A label, help and faults around one control. */
export function Field(props: FieldProps & { children: (control: ControlProps) => ReactNode }): ReactNode {
  const { pointer, label, help, faults, children } = props;
  const id = useFieldIds()(pointer);
  const own = faultsAt(faults, pointer);
  return (
    <div className={own.length > 0 ? "field faulty" : "field"}>
      <label htmlFor={id}>{label}</label>
      {help !== undefined && (
        <p className="help" id={`${id}-help`}>
          {help}
        </p>
      )}
      {children({ id, "aria-invalid": own.length > 0, "aria-describedby": describedBy(id, help, own) })}
      <FaultWords id={id} faults={own} />
    </div>
  );
}

/** A question with several controls, such as a list of choices. */
export function FieldGroup(props: FieldProps & { children: ReactNode }): ReactNode {
  const { pointer, label, help, faults, children } = props;
  const id = useFieldIds()(pointer);
  const own = faultsAt(faults, pointer);
  return (
    <fieldset
      id={id}
      tabIndex={-1}
      className={own.length > 0 ? "field faulty" : "field"}
      aria-describedby={describedBy(id, help, own)}
    >
      <legend>{label}</legend>
      {help !== undefined && (
        <p className="help" id={`${id}-help`}>
          {help}
        </p>
      )}
      {children}
      <FaultWords id={id} faults={own} />
    </fieldset>
  );
}

function describedBy(id: string, help: ReactNode, own: readonly FieldFault[]): string | undefined {
  const ids = [...(help === undefined ? [] : [`${id}-help`]), ...(own.length === 0 ? [] : [`${id}-fault`])];
  return ids.length === 0 ? undefined : ids.join(" ");
}

function FaultWords({ id, faults }: { id: string; faults: readonly FieldFault[] }): ReactNode {
  if (faults.length === 0) return null;
  return (
    <p className="fault" id={`${id}-fault`}>
      {faults.map(({ detail, remedy, pointer, code }) => (
        <Said key={`${pointer} ${code}`}>
          {detail} {remedy}{" "}
        </Said>
      ))}
    </p>
  );
}
