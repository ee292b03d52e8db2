import type { ReactNode } from "react";
import { fieldText } from "../../texts/fields.ts";
import { Said } from "../said.tsx";

/** One thing that an entry says: what it is, what the person would record, and what is there by now. */
export interface Difference {
  readonly label: string;
  readonly mine: string;
  readonly theirs: string;
}

/** Somebody changed the entry meanwhile: both states beside each other, and the person chooses. */
export function StaleChoice(props: {
  differences: readonly Difference[];
  useMine: () => void;
  useTheirs: () => void;
}): ReactNode {
  const { differences, useMine, useTheirs } = props;
  return (
    <div role="alert" className="notice">
      <p>
        <strong>{fieldText("staleTitle")}.</strong> {fieldText("staleDetail")}
      </p>
      <div className="beside">
        <State title={fieldText("mine")} rows={differences.map(({ label, mine }) => ({ label, value: mine }))}>
          <button type="button" onClick={useMine}>
            {fieldText("useMine")}
          </button>
        </State>
        <State title={fieldText("theirs")} rows={differences.map(({ label, theirs }) => ({ label, value: theirs }))}>
          <button type="button" className="first" onClick={useTheirs}>
            {fieldText("useTheirs")}
          </button>
        </State>
      </div>
    </div>
  );
}

function State(props: {
  title: string;
  rows: readonly { readonly label: string; readonly value: string }[];
  children: ReactNode;
}): ReactNode {
  return (
    <section className="card" aria-label={props.title}>
      <p>
        <strong>{props.title}</strong>
      </p>
      <dl className="facts">
        {props.rows.map(({ label, value }) => (
          <div key={label} className="fact">
            <dt>{label}</dt>
            <dd>
              <Said>{value}</Said>
            </dd>
          </div>
        ))}
      </dl>
      {props.children}
    </section>
  );
}
