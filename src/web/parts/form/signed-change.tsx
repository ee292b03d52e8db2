import { type ReactNode, useEffect, useId, useRef } from "react";
import type { SignedChanges } from "../../../../shared/signed-changes.ts";
import { fieldText } from "../../texts/fields.ts";
import { FigureTable } from "../figure-changes.tsx";
import { Said } from "../said.tsx";
import { useSession } from "../session.tsx";
import { instantWords, monthWords } from "../words.ts";

/**
 * What a change would do to signed months, with the figures before and after: the person records it, or goes back to the
 * form as it was typed. Gets the focus when it appears; going back returns it to the form.
 */
export function SignedChange(props: { changes: SignedChanges; decide: (isRight: boolean) => void }): ReactNode {
  const { changes, decide } = props;
  const { zone } = useSession().facility;
  const id = useId();
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), []);
  const goBack = (): void => {
    const form = place.current?.closest("form");
    decide(false);
    // The button takes the focus again once it is enabled.
    setTimeout(() => form?.querySelector<HTMLElement>("button[type=submit]")?.focus());
  };
  return (
    <section className="notice" aria-labelledby={id} ref={place} tabIndex={-1}>
      <div id={id}>
        {changes.months.map(({ month }) => (
          <p key={month}>
            <strong>{fieldText("changesSigned", { month: monthWords(month) })}.</strong>
          </p>
        ))}
      </div>
      <p>{fieldText("changesDetail")}</p>
      {changes.months.map(({ month, signedBy, signedAt, figures, hasOthers }) => (
        <div key={month}>
          <p>
            <Said>{fieldText("signedBy", { name: signedBy, when: instantWords(signedAt, zone) })}</Said>
          </p>
          {figures.length > 0 && (
            <FigureTable figures={figures} caption={fieldText("figuresOf", { month: monthWords(month) })} />
          )}
          {hasOthers && <p>{fieldText("others")}</p>}
        </div>
      ))}
      <p className="buttons">
        <button type="button" className="first" onClick={() => decide(true)}>
          {fieldText("recordChange")}
        </button>{" "}
        <button type="button" onClick={goBack}>
          {fieldText("goBack")}
        </button>
      </p>
    </section>
  );
}
