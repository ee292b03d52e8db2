import type { ReactNode } from "react";
import type { ProblemDocument } from "../../../shared/problem-document.ts";
import { shellText } from "../texts/shell.ts";
import { Said } from "./said.tsx";
import type { Asked } from "./use-answer.ts";

/** Shows an answer, or in words why there is none yet. `what` completes "Loading …". */
export function ShowAnswer<T>(props: {
  asked: Asked<T> & { readonly isOld?: boolean };
  what: string;
  children: (value: T) => ReactNode;
}): ReactNode {
  const { asked, what, children } = props;
  if (asked.state === "answered") {
    return (
      <>
        {asked.isOld && <OldNotice again={asked.again} />}
        {children(asked.value)}
      </>
    );
  }
  if (asked.state === "waiting") {
    return (
      <p role="status" className="waiting">
        {shellText("loading", { what })}
      </p>
    );
  }
  return (
    <div role="alert" className="notice fault">
      {asked.state === "refused" ? <Refusal document={asked.problem.document} /> : <Unreachable />}
      {(asked.state === "unreachable" || asked.problem.document.status >= 500) && (
        <button type="button" onClick={asked.again}>
          {shellText("again")}
        </button>
      )}
    </div>
  );
}

function OldNotice({ again }: { again: () => void }): ReactNode {
  return (
    <div role="alert" className="notice">
      <p>
        <strong>{shellText("oldTitle")}.</strong> {shellText("oldDetail")}
      </p>
      <button type="button" onClick={again}>
        {shellText("again")}
      </button>
    </div>
  );
}

function Unreachable(): ReactNode {
  return (
    <>
      <p>
        <strong>{shellText("unreachableTitle")}.</strong> {shellText("unreachableDetail")}
      </p>
      <p>{shellText("unreachableRemedy")}</p>
    </>
  );
}

/** A refusal in words: what is wrong this time, and how to mend it. */
export function Refusal({ document }: { document: ProblemDocument }): ReactNode {
  const { title, detail, status, instance, errors } = document;
  return (
    <>
      <p>
        <strong>
          <Said>{title}</Said>.
        </strong>{" "}
        <Said>{detail}</Said>
      </p>
      <p>
        <Said>{[...new Set(errors.map((error) => error.remedy))].join(" ")}</Said>
        {status >= 500 && ` ${shellText("requestNumber", { number: instance })}`}
      </p>
    </>
  );
}
