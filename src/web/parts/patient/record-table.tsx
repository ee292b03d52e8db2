import type { ReactNode } from "react";
import { insertionText } from "../../texts/insertion.ts";
import { Said } from "../said.tsx";

/** One line of a record: null was not recorded, and is shown as that, never as no. */
export interface RecordRow {
  readonly label: string;
  readonly value: string | null;
}

/** Lines of a record, each with its label; what was not recorded says so. */
export function RecordTable(props: { rows: readonly RecordRow[] }): ReactNode {
  return (
    <dl className="facts">
      {props.rows.map(({ label, value }) => (
        <div key={label} className="fact">
          <dt>{label}</dt>
          <dd>{value === null ? <em>{insertionText("nothing")}</em> : <Said>{value}</Said>}</dd>
        </div>
      ))}
    </dl>
  );
}
