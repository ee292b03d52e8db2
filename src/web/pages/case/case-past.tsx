import type { ReactNode } from "react";
import { auditActions } from "../../../../shared/audit-words.ts";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { caseText } from "../../texts/case.ts";
import { caseDecisionText } from "../../texts/culture-words.ts";
import { type Case, editionName } from "./case-rows.ts";

/** What became other since somebody decided, by whom and why. */
export function Changed(props: { changed: NonNullable<Case["changed"]>; nameOf: NameOf }): ReactNode {
  const { before, after, cause, reason, at, by } = props.changed;
  const { time } = useSession();
  return (
    <div className="notice">
      <p>
        <strong>{caseText("changedTitle")}</strong>
      </p>
      <p>
        <Said>{caseText("changedBefore", { words: before })}</Said>
      </p>
      <p>
        <Said>{caseText("changedAfter", { words: after })}</Said>
      </p>
      <p>
        <Said>
          {caseText("changedCause", { cause: auditActions[cause], name: props.nameOf(by), when: time.short(at) })}
        </Said>
      </p>
      {reason !== null && (
        <p>
          <Said>{caseText("changedReason", { reason })}</Said>
        </p>
      )}
    </div>
  );
}

/** Decisions, printed beside the determination, and what it was determined to be before. */
export function CasePast({ detail, nameOf }: { detail: Case; nameOf: NameOf }): ReactNode {
  const { decisions, history } = detail;
  const { time } = useSession();
  return (
    <>
      <section aria-labelledby="decisions">
        <h2 id="decisions">{caseText("decisions")}</h2>
        {decisions.length === 0 && <p>{caseText("decisionsNone")}</p>}
        <ol>
          {decisions.map(({ kind, summary, reason, at, by }) => (
            <li key={`${at} ${kind}`}>
              <Said>
                {caseText("decision", {
                  ...{ kind: caseDecisionText(kind), when: time.short(at), name: nameOf(by), summary },
                })}
              </Said>
              {reason !== null && (
                <>
                  {" "}
                  <Said>“{reason}”</Said>
                </>
              )}
            </li>
          ))}
        </ol>
      </section>
      <details>
        <summary>{caseText("history")}</summary>
        <ol>
          {history.map(({ number, summary, editionId, cause, at, by }) => (
            <li key={number}>
              <Said>
                {caseText("historyLine", {
                  ...{ when: time.short(at), summary, edition: editionName(editionId) },
                  ...{ cause: auditActions[cause], name: nameOf(by) },
                })}
              </Said>
            </li>
          ))}
        </ol>
      </details>
    </>
  );
}
