import { type ReactNode, type ToggleEvent, useId, useState } from "react";
import type { TermName } from "../texts/terms.ts";
import { termsText, termText } from "../texts/terms.ts";
import { PageLink } from "./page-link.tsx";

/** A word of the trade: touched, it opens its definition and where that stands. `children` when it is written otherwise. */
export function Term({ name, children }: { name: TermName; children?: ReactNode }): ReactNode {
  const id = useId();
  // A list says the same words on every card: each definition is drawn when somebody opens it.
  const [isNeeded, setNeeded] = useState(false);
  const onBeforeToggle = ({ newState }: ToggleEvent): void => {
    if (newState === "open") setNeeded(true);
  };
  const word = termText(`${name}.word`);
  return (
    <>
      <button type="button" className="term" popoverTarget={id}>
        {children ?? word}
      </button>
      <span popover="auto" id={id} className="definition" role="note" onBeforeToggle={onBeforeToggle}>
        {isNeeded && <Definition name={name} word={word} />}
      </span>
    </>
  );
}

function Definition({ name, word }: { name: TermName; word: string }): ReactNode {
  return (
    <>
      <strong>{word}</strong>
      <br />
      {termText(`${name}.means`)}
      <br />
      <span className="small">{termsText("source", { source: termText(`${name}.source`) })}</span>
      <br />
      <PageLink to="/terms">{termsText("all")}</PageLink>
    </>
  );
}
