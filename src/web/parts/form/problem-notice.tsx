import { type ReactNode, useEffect, useRef } from "react";
import { fieldText } from "../../texts/fields.ts";
import { Said } from "../said.tsx";
import { Refusal } from "../show-answer.tsx";
import type { Sending } from "../use-recording.ts";
import { faultsOf, useFieldIds } from "./faults.ts";
import { SignedChange } from "./signed-change.tsx";

/** Codes of values that a person may say are right all the same. */
const confirmable = "unusual-value";

/**
 * Why something was not recorded: each fault leads to its field; values that are only unusual can be confirmed; after a
 * lost connection it is sent again; what changes a signed month is asked about. Gets the focus when it appears. Shows nothing while all is well.
 */
export function ProblemNotice(props: {
  sending: Sending<unknown>;
  sendAgain: () => void;
  /** Says that the values at these pointers are right; left out where nothing is confirmable. */
  confirm?: (pointers: readonly string[]) => void;
}): ReactNode {
  const { sending, sendAgain, confirm } = props;
  const place = useRef<HTMLDivElement>(null);
  const { state } = sending;
  useEffect(() => {
    if (state === "refused" || state === "unreachable") place.current?.focus();
  }, [state]);
  if (sending.state === "asking") return <SignedChange {...sending} />;
  if (state !== "refused" && state !== "unreachable") return null;
  return (
    <div role="alert" className="notice fault" ref={place} tabIndex={-1}>
      {state === "unreachable" ? (
        <Lost sendAgain={sendAgain} />
      ) : (
        <Faults sending={sending} {...(confirm ? { confirm } : {})} />
      )}
    </div>
  );
}

function Lost({ sendAgain }: { sendAgain: () => void }): ReactNode {
  return (
    <>
      <p>
        <strong>{fieldText("lostTitle")}.</strong> {fieldText("lostDetail")}
      </p>
      <button type="button" className="first" onClick={sendAgain}>
        {fieldText("sendAgain")}
      </button>
    </>
  );
}

function Faults(props: { sending: Sending<unknown>; confirm?: (pointers: readonly string[]) => void }): ReactNode {
  const { sending, confirm } = props;
  if (sending.state !== "refused") return null;
  const { document } = sending.problem;
  const faults = faultsOf(sending);
  if (document.status >= 500 || faults.every(({ pointer }) => pointer === "")) return <Refusal document={document} />;
  const unusual = faults.filter(({ code }) => code === confirmable).map(({ pointer }) => pointer);
  return (
    <>
      <p>
        <strong>{fieldText("problemTitle", { count: faults.length })}.</strong>
      </p>
      <ul>
        {faults.map(({ pointer, detail, remedy, code }) => (
          <li key={`${pointer} ${code}`}>
            <FaultLink pointer={pointer}>
              <Said>
                {detail} {remedy}
              </Said>
            </FaultLink>
          </li>
        ))}
      </ul>
      {confirm && unusual.length === faults.length && (
        <button type="button" onClick={() => confirm(unusual)}>
          {fieldText("isRight")}
        </button>
      )}
    </>
  );
}

function FaultLink({ pointer, children }: { pointer: string; children: ReactNode }): ReactNode {
  const id = useFieldIds()(pointer);
  if (pointer === "") return children;
  return (
    <a
      href={`#${id}`}
      onClick={(event) => {
        const field = document.getElementById(id);
        if (!field) return;
        event.preventDefault();
        field.focus();
        field.scrollIntoView({ block: "center" });
      }}
    >
      {children}
    </a>
  );
}
