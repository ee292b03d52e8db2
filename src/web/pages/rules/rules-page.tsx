import type { ReactNode } from "react";
import { readEdition } from "../../../../shared/api/editions.ts";
import { editionId, editionNames } from "../../../../shared/edition-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { useHashFocus } from "../../parts/use-hash-focus.ts";
import { dayWords, longDayWords } from "../../parts/words.ts";
import type { PageProps } from "../../routes.ts";
import { rulesText } from "../../texts/rules.ts";
import { ChosenReadings } from "./chosen-readings.tsx";
import { EditionDifferences } from "./edition-differences.tsx";
import { OneRule } from "./one-rule.tsx";

type Edition = OutputOf<typeof readEdition>;

/** An edition of the definitions as it is applied here: every rule with its source and examples, and its open points. */
export function RulesPage({ question }: PageProps): ReactNode {
  const asked = editionId.safeParse(question.get("edition"));
  const chosen = asked.success ? asked.data : "us-2024";
  const { may } = useSession();
  const edition = useAnswer(readEdition, { editionId: chosen });
  return (
    <Page title={rulesText("title")}>
      <p className="lead">{rulesText("lead")}</p>
      <nav aria-label={rulesText("editions")} className="on-screen">
        <ul className="plain-list row">
          {editionId.options.map((one) => (
            <li key={one}>
              <PageLink to={`/rules?edition=${one}`} className="button" isCurrent={one === chosen}>
                <Said>{editionNames[one]}</Said>
              </PageLink>
            </li>
          ))}
        </ul>
      </nav>
      <ShowAnswer asked={edition} what={rulesText("what")}>
        {(value) => <Shown key={chosen} edition={value} />}
      </ShowAnswer>
      {may("judge-cases") && <EditionDifferences key={question.toString()} chosen={chosen} question={question} />}
    </Page>
  );
}

function Shown({ edition }: { edition: Edition }): ReactNode {
  useHashFocus();
  const { title, source, inForce, rules, openPoints, caution } = edition;
  return (
    <>
      <section aria-labelledby="edition">
        <h2 id="edition">
          <Said>{title}</Said>
        </h2>
        <p>
          {inForce.to === null
            ? rulesText("inForce", { from: longDayWords(inForce.from) })
            : rulesText("inForceTo", { from: longDayWords(inForce.from), to: dayWords(inForce.to) })}
          . <Said>{rulesText("source", { source })}</Said>
        </p>
        <p className="notice hint">
          <Said>{caution}</Said> {rulesText("memory")}
        </p>
      </section>
      <section aria-labelledby="rules">
        <h2 id="rules">{rulesText("rules")}</h2>
        <ol className="plain-list">
          {rules.map((rule) => (
            <li key={rule.ruleId}>
              <OneRule rule={rule} editionId={edition.editionId} />
            </li>
          ))}
        </ol>
      </section>
      <OpenPoints points={openPoints} />
      <ChosenReadings editionId={edition.editionId} />
    </>
  );
}

function OpenPoints({ points }: { points: Edition["openPoints"] }): ReactNode {
  return (
    <section aria-labelledby="open-points">
      <h2 id="open-points" tabIndex={-1}>
        {rulesText("openPoints")}
      </h2>
      <p>{rulesText("openLead")}</p>
      <ul className="plain-list">
        {points.map(({ point, reading, why, confidence, otherReading }) => (
          <li key={point} className="card">
            <h3 className="first-heading">
              <Said>{point}</Said>
            </h3>
            <dl className="facts">
              <dt>{rulesText("reading")}</dt>
              <dd>
                <Said>{reading}</Said>
              </dd>
              <dt>{rulesText("why")}</dt>
              <dd>
                <Said>{why}</Said>
              </dd>
              <dt>{rulesText("other")}</dt>
              <dd>
                <Said>{otherReading}</Said>
              </dd>
              <dt>{rulesText("confidence")}</dt>
              <dd>{rulesText(confidence)}</dd>
            </dl>
          </li>
        ))}
      </ul>
    </section>
  );
}
