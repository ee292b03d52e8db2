import type { ReactNode } from "react";
import type { Asked } from "./use-answer.ts";

/** Shows an answer, or in words why there is none yet. `what` completes "Loading …" and "… could not be loaded". */
export function ShowAnswer<T>(props: { asked: Asked<T>; what: string; children: (value: T) => ReactNode }): ReactNode {
  const { asked, what, children } = props;
  if (asked.state === "answered") return children(asked.value);
  if (asked.state === "waiting") {
    return (
      <p role="status" className="waiting">
        Loading {what}…
      </p>
    );
  }
  const words = asked.state === "refused" ? refusalWords(asked.problem.document) : unreachableWords;
  return (
    <div role="alert" className="notice">
      <p>
        <strong>{words.title}.</strong> {words.detail}
      </p>
      <p>{words.remedy}</p>
      {words.canRetry && (
        <button type="button" onClick={asked.again}>
          Try again
        </button>
      )}
    </div>
  );
}

interface Words {
  readonly title: string;
  readonly detail: string;
  readonly remedy: string;
  readonly canRetry: boolean;
}

const unreachableWords: Words = {
  title: "The server does not answer",
  detail: "Nothing is shown, because it would not be up to date.",
  remedy:
    "Check that Dwell Ledger runs and that this computer reaches it. If it was just updated, load this page anew.",
  canRetry: true,
};

function refusalWords(document: {
  readonly title: string;
  readonly detail: string;
  readonly status: number;
  readonly instance: string;
  readonly errors: readonly { readonly remedy: string }[];
}): Words {
  const { title, detail, status, instance, errors } = document;
  const isFault = status >= 500;
  const remedy = [...new Set(errors.map((error) => error.remedy))].join(" ");
  return { title, detail, remedy: isFault ? `${remedy} Request ${instance}.` : remedy, canRetry: isFault };
}
