import type { ReactNode } from "react";
import type { readEdition } from "../../../../shared/api/editions.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Said } from "../../parts/said.tsx";
import { dayWords, longDayWords } from "../../parts/words.ts";
import { stepStatusText } from "../../texts/culture-words.ts";
import { rulesText } from "../../texts/rules.ts";

type Rule = OutputOf<typeof readEdition>["rules"][number];

/** The color that says what an example comes to once more; the word stands in it. */
const tones = { held: "moss", failed: "rust", "cannot-tell": "ochre", noted: "slate" } as const;

/** A rule: what it says, where that stands, when it is in force, and its worked examples. */
export function OneRule({ rule, editionId }: { rule: Rule; editionId: string }): ReactNode {
  const { ruleId, title, says, sources, inForce } = rule;
  const examples = rule.examples.filter((example) => example.editionId === editionId);
  return (
    <article className="card" id={ruleId} tabIndex={-1} aria-labelledby={`${ruleId}-title`}>
      <h3 id={`${ruleId}-title`} className="first-heading">
        <Said>{title}</Said>
      </h3>
      <p>
        <Said>{says}</Said>
      </p>
      <p className="small">
        <Said>{rulesText("source", { source: sources.join("; ") })}</Said>
        <br />
        {inForce.to === null
          ? rulesText("inForce", { from: longDayWords(inForce.from) })
          : rulesText("inForceTo", { from: longDayWords(inForce.from), to: dayWords(inForce.to) })}
        .
      </p>
      {examples.length === 0 ? (
        <p className="small">{rulesText("noExamples")}</p>
      ) : (
        <details>
          <summary>{rulesText("examples", { count: examples.length })}</summary>
          <ul className="plain-list">
            {examples.map((example) => (
              <li key={example.title} className="example">
                <OneExample example={example} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </article>
  );
}

function OneExample({ example }: { example: Rule["examples"][number] }): ReactNode {
  const { title, story, status, sentences } = example;
  return (
    <>
      <p>
        <span className={`state tone-${tones[status]}`}>{stepStatusText(status)}</span>{" "}
        <strong>
          <Said>{title}</Said>
        </strong>
      </p>
      <p>
        <Said>{story.join(" ")}</Said>
      </p>
      <p>
        {rulesText("result")}: <Said>{sentences.join(" ")}</Said>
      </p>
    </>
  );
}
