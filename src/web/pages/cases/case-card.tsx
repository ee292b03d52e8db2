import type { ReactNode } from "react";
import { auditActions } from "../../../../shared/audit-words.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { casesText, caseText } from "../../texts/case.ts";
import { caseStateText } from "../../texts/culture-words.ts";
import { patientText } from "../../texts/patient.ts";
import type { CaseInList } from "./case-filter.ts";
import { Glance } from "./glance.tsx";

/** The color that says a state once more; the word stands in it. */
const tones = {
  waiting: "ochre",
  changed: "rust",
  confirmed: "moss",
  disagreed: "plum",
  pending: "slate",
  closed: "slate",
  "out-of-scope": "slate",
} as const;

/** One culture of a list: what the definitions say, what changed, what to look up, and its days at a glance. */
export function CaseCard({ one }: { one: CaseInList }): ReactNode {
  const { wardCode } = useSession();
  const { caseId, subject, wardId, identifier, ageDays, isDischarged, state, summary, grew, lookUp } = one;
  const ward = wardId === null ? casesText("noWard") : wardCode(wardId);
  const day = dayWords(subject.day);
  return (
    <article className="card" aria-labelledby={`case-${caseId}`}>
      <h2 id={`case-${caseId}`} className="first-heading">
        <PageLink to={`/cases/${caseId}`}>
          <Said>{casesText(subject.kind === "specimen" ? "heading" : "headingFinding", { ward, day })}</Said>
        </PageLink>
      </h2>
      <p className="row">
        <span className={`state tone-${tones[state]}`}>{caseStateText(state)}</span>
        <span>
          {patientText("patient")}{" "}
          <strong>
            <Said>{identifier}</Said>
          </strong>
          , {caseText("ago", { count: ageDays })}
          {isDischarged && <>, {casesText("discharged")}</>}
        </span>
      </p>
      <p>
        <strong>
          <Said>{summary}</Said>
        </strong>
      </p>
      {grew.length > 0 && (
        <p>
          <Said>{casesText("grew", { what: grew.join("; ") })}</Said>
        </p>
      )}
      {lookUp.length > 0 && (
        <p className="notice">
          <Said>{casesText("lookUp", { what: lookUp.join(" ") })}</Said>
        </p>
      )}
      {one.closedBecause !== null && (
        <p>
          <Said>{casesText("closedBecause", { why: one.closedBecause })}</Said>
        </p>
      )}
      {one.hinges.map(({ point, otherAnswer }) => (
        <p key={`${point} ${otherAnswer}`} className="notice hint">
          <strong>{casesText("openReading")}</strong>{" "}
          <Said>{casesText("openPoint", { point, answer: otherAnswer })}</Said>
        </p>
      ))}
      <Changed changed={one.changed} />
      <Glance one={one} />
    </article>
  );
}

function Changed({ changed }: Pick<CaseInList, "changed">): ReactNode {
  if (changed === null) return null;
  return (
    <p className="notice">
      <Said>{caseText("changedBefore", { words: changed.before })}</Said>
      <br />
      <Said>{caseText("changedAfter", { words: changed.after })}</Said>
      <br />
      <Said>{auditActions[changed.cause]}</Said>
    </p>
  );
}
