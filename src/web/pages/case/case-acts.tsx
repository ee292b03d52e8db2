import { type ReactNode, useState } from "react";
import { confirmCase, disagreeWithCase, reopenCase } from "../../../../shared/api/cases.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import type { Reply } from "../../parts/server.ts";
import { type Sending, useRecording } from "../../parts/use-recording.ts";
import { dayWords } from "../../parts/words.ts";
import { caseText } from "../../texts/case.ts";
import type { Case } from "./case-rows.ts";

interface ActsProps {
  readonly detail: Case;
  readonly again: () => void;
}

/** Confirm, disagree, take back, or go to the fact that is wrong. */
export function CaseActs({ detail, again }: ActsProps): ReactNode {
  const { state } = detail;
  const isDecided = state === "confirmed" || state === "disagreed";
  const waits = state === "waiting" || state === "changed";
  return (
    <section aria-labelledby="decide" className="on-screen">
      <h2 id="decide" tabIndex={-1}>
        {caseText("decide")}
      </h2>
      <p>{caseText("decideLead")}</p>
      {waits && (
        <>
          <Confirm {...{ detail, again }} />
          <details>
            <summary>{caseText("disagree")}</summary>
            <Disagree {...{ detail, again }} />
          </details>
        </>
      )}
      {isDecided && (
        <details>
          <summary>{caseText("reopen")}</summary>
          <Reopen {...{ detail, again }} />
        </details>
      )}
      {!waits && !isDecided && <p>{caseText("nothingToDecide")}</p>}
      <Facts detail={detail} />
    </section>
  );
}

/** Says that the determination became another one meanwhile; nothing is recorded unseen. */
function staleNotice(sending: Sending<unknown>, again: () => void): ReactNode {
  if (sending.state !== "refused" || sending.problem.code !== "stale-version") return undefined;
  return (
    <div role="alert" className="notice">
      <p>{caseText("stale")}</p>
      <button type="button" className="first" onClick={again}>
        {caseText("readAgain")}
      </button>
    </div>
  );
}

/** One decision with a line of text. */
function Decision(props: {
  scope: string;
  field: { readonly pointer: string; readonly label: string };
  button: string;
  /** Whether a text has to be given. */
  needsText: boolean;
  sending: Sending<unknown>;
  send: (text: string) => Promise<Reply<unknown>>;
  again: () => void;
}): ReactNode {
  const { scope, field, button, needsText, sending, send, again } = props;
  const [text, setText] = useState("");
  const record = async (): Promise<void> => {
    const reply = await send(text.trim());
    if (reply.state === "answered") again();
  };
  const stale = staleNotice(sending, again);
  return (
    <FieldScope value={scope}>
      <RecordForm
        {...{ sending, record, button }}
        isSmall={needsText}
        isReady={!needsText || text.trim() !== ""}
        {...(stale ? { problem: stale } : {})}
      >
        <div className="decision">
          <TextField {...field} faults={faultsOf(sending)} maxLength={500} value={text} change={setText} />
        </div>
      </RecordForm>
    </FieldScope>
  );
}

function Confirm({ detail: { caseId, version }, again }: ActsProps): ReactNode {
  const { sending, send } = useRecording(confirmCase);
  return (
    <Decision
      {...{ sending, again }}
      scope="confirm"
      field={{ pointer: "/remark", label: caseText("remark") }}
      button={caseText("confirm")}
      needsText={false}
      send={(remark) => send({ caseId, seenVersion: version, ...(remark === "" ? {} : { remark }) })}
    />
  );
}

function Disagree({ detail: { caseId, version }, again }: ActsProps): ReactNode {
  const { sending, send } = useRecording(disagreeWithCase);
  return (
    <Decision
      {...{ sending, again }}
      scope="disagree"
      field={{ pointer: "/reason", label: caseText("disagreeReason") }}
      button={caseText("disagreeDo")}
      needsText
      send={(reason) => send({ caseId, seenVersion: version, reason })}
    />
  );
}

function Reopen({ detail: { caseId, version }, again }: ActsProps): ReactNode {
  const { sending, send } = useRecording(reopenCase);
  return (
    <Decision
      {...{ sending, again }}
      scope="reopen"
      field={{ pointer: "/reason", label: caseText("reopenReason") }}
      button={caseText("reopenDo")}
      needsText
      send={(reason) => send({ caseId, seenVersion: version, reason })}
    />
  );
}

/** Where the facts stand that the determination rests on. */
function Facts({ detail: { patientId, picture } }: { detail: Case }): ReactNode {
  return (
    <details>
      <summary>{caseText("correct")}</summary>
      <p>{caseText("correctLead")}</p>
      <ul className="plain-list row">
        <li>
          <PageLink to={`/patients/${patientId}/cultures`} className="button">
            {caseText("toCultures")}
          </PageLink>
        </li>
        {picture.catheters.map(({ catheterId, first }) => (
          <li key={catheterId}>
            <PageLink to={`/patients/${patientId}/catheters/${catheterId}`} className="button">
              {first === null ? caseText("toCatheterUnknown") : caseText("toCatheter", { day: dayWords(first) })}
            </PageLink>
          </li>
        ))}
        <li>
          <PageLink to={`/patients/${patientId}`} className="button">
            {caseText("toRecord")}
          </PageLink>
        </li>
      </ul>
    </details>
  );
}
