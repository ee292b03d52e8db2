import type { ReactNode } from "react";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { caseText } from "../../texts/case.ts";
import { stepStatusText } from "../../texts/culture-words.ts";
import { addressOf, type Case, type Determination, type Step } from "./case-rows.ts";

/** The shape that says a step's state once more, also in black and white. */
const shapes = { held: "✓", failed: "✗", "cannot-tell": "?", noted: "•" } as const;
const tones = { held: "moss", failed: "rust", "cannot-tell": "ochre", noted: "slate" } as const;

/** How it was worked out: a sentence a step, with its day, evidence, rule and source. */
export function Derivation(props: { detail: Case; determination: Determination }): ReactNode {
  const { detail, determination } = props;
  return (
    <section aria-labelledby="derivation">
      <h2 id="derivation" tabIndex={-1}>
        {caseText("derivation")}
      </h2>
      <p>{caseText("derivationLead")}</p>
      <ol className="derivation">
        {determination.derivation.map((step) => (
          <li key={`${step.rule} ${step.sentence}`}>
            <OneStep step={step} detail={detail} editionId={determination.editionId} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function OneStep({ step, detail, editionId }: { step: Step; detail: Case; editionId: string }): ReactNode {
  const { rule, status, sentence, sources, nearest, lookUp } = step;
  // Where a definition is met, what does not hold is no fault: an infection that was not there on admission, say.
  const tone = status === "failed" && detail.outcome === "event" ? "slate" : tones[status];
  return (
    <>
      <p>
        <span className={`state tone-${tone}`}>
          <span aria-hidden="true">{shapes[status]}</span> {stepStatusText(status)}
        </span>{" "}
        <Said>{sentence}</Said>
      </p>
      {nearest !== null && (
        <p>
          <Said>{nearest}</Said>
        </p>
      )}
      {lookUp !== null && (
        <p className="notice">
          <strong>{caseText("lookUp")}:</strong> <Said>{lookUp}</Said>
        </p>
      )}
      <div className="row small">
        <Evidences step={step} detail={detail} />
        <PageLink to={`/rules?edition=${editionId}#${rule}`}>
          {caseText("rule", { rule: rule.replaceAll("-", " ") })}
        </PageLink>
        <span className="name-of">
          <Said>{caseText("sources", { sources: sources.join("; ") })}</Said>
        </span>
      </div>
    </>
  );
}

const evidenceWords = {
  specimen: "evidenceSpecimen",
  organism: "evidenceOrganism",
  sign: "evidenceSign",
  finding: "evidenceFinding",
  catheter: "evidenceCatheter",
  stay: "evidenceStay",
  ward: "evidenceWard",
  patient: "evidencePatient",
} as const;

function Evidences({ step: { evidence }, detail }: { step: Step; detail: Case }): ReactNode {
  if (evidence.length === 0) return null;
  const links = new Map(evidence.map((one) => [`${addressOf(one, detail)} ${one.kind}`, one]));
  return (
    <span className="row">
      {caseText("evidence")}
      {[...links].map(([key, one]) => (
        <PageLink key={key} to={addressOf(one, detail)}>
          {caseText(evidenceWords[one.kind])}
        </PageLink>
      ))}
    </span>
  );
}
