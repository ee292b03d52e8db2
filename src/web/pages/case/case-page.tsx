import { type ReactNode, useId } from "react";
import { readCase } from "../../../../shared/api/cases.ts";
import { ChartView } from "../../parts/chart-view.tsx";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { dayWords } from "../../parts/words.ts";
import type { PageProps } from "../../routes.ts";
import { caseText } from "../../texts/case.ts";
import { signText } from "../../texts/culture-words.ts";
import { CaseActs } from "./case-acts.tsx";
import { CaseHead, EventFacts } from "./case-head.tsx";
import { CasePast, Changed } from "./case-past.tsx";
import { casePicture } from "./case-picture.ts";
import { type Case, editionName, lookUpsOf } from "./case-rows.ts";
import { Derivation } from "./derivation.tsx";
import { Hinges } from "./hinges.tsx";
import { shortSignsIn } from "./picture-marks.ts";

/** One culture: what the definitions say of it, the days around it, every step, and what people decide. */
export function CasePage({ found }: PageProps): ReactNode {
  const asked = useAnswer(readCase, { caseId: Number(found.caseId) });
  return (
    <Page title={caseText("plainTitle")}>
      <ShowAnswer asked={asked} what={caseText("what")}>
        {(detail) => (
          <WithNames what={caseText("what")}>
            {(nameOf) => <Shown key={detail.version} detail={detail} nameOf={nameOf} again={asked.again} />}
          </WithNames>
        )}
      </ShowAnswer>
    </Page>
  );
}

function Shown({ detail, nameOf, again }: { detail: Case; nameOf: NameOf; again: () => void }): ReactNode {
  const { determination, changed, caution } = detail;
  return (
    <>
      <CaseHead detail={detail} />
      <p className="row on-screen">
        <a className="step" href="#decide">
          {caseText("decide")}
        </a>
        <PageLink to="/cases">{caseText("toList")}</PageLink>
        <PageLink to={`/patients/${detail.patientId}/cultures`}>{caseText("toCultures")}</PageLink>
        <button type="button" onClick={() => print()}>
          {caseText("print")}
        </button>
      </p>
      {changed && <Changed {...{ changed, nameOf }} />}
      <Outcome detail={detail} />
      <p className="notice hint">
        <Said>{caution}</Said>
      </p>
      <Picture detail={detail} />
      {determination && <Derivation {...{ detail, determination }} />}
      <CaseActs detail={detail} again={again} />
      <CasePast detail={detail} nameOf={nameOf} />
    </>
  );
}

/** What it comes to, in a sentence, and what would have to be looked up. */
function Outcome({ detail }: { detail: Case }): ReactNode {
  const { determination, outcome, summary, knownThrough } = detail;
  const lookUps = lookUpsOf(detail);
  const edition = editionName(determination?.editionId ?? "");
  return (
    <section aria-labelledby="outcome">
      <h2 id="outcome">{caseText("outcome")}</h2>
      <p className="lead">
        <strong>{outcome === null ? caseText("gone") : <Said>{summary}</Said>}</strong>
      </p>
      {determination?.event && <EventFacts event={determination.event} />}
      {determination && <Others determination={determination} />}
      {outcome === "cannot-tell" && lookUps.length > 0 && (
        <div className="notice">
          <p>
            <strong>{caseText("lookUp")}</strong>
          </p>
          <ul>
            {lookUps.map((one) => (
              <li key={one}>
                <Said>{one}</Said>
              </li>
            ))}
          </ul>
        </div>
      )}
      <p className="small">
        {caseText("read", { day: dayWords(knownThrough) })} <Said>{edition}</Said>
      </p>
    </section>
  );
}

/** Other cultures that this one belongs to or depends on, and what another reading would say. */
function Others({ determination }: { determination: NonNullable<Case["determination"]> }): ReactNode {
  const { repeatOf, dependsOn, hinges } = determination;
  const linked = [
    ...(repeatOf ? [{ words: caseText("repeatOf"), other: repeatOf }] : []),
    ...dependsOn.map((other) => ({ words: caseText("dependsOn"), other })),
  ];
  return (
    <>
      {linked.map(({ words, other }) => (
        <p key={other.id}>
          {words} <PageLink to={`/cases/${other.id}`}>{caseText("otherCase", { day: dayWords(other.day) })}</PageLink>
        </p>
      ))}
      {hinges.length > 0 && <Hinges hinges={hinges} />}
    </>
  );
}

function Picture({ detail }: { detail: Case }): ReactNode {
  const { wardCode } = useSession();
  const id = useId();
  const signs = shortSignsIn(detail);
  return (
    <section aria-labelledby="picture">
      <h2 id="picture">{caseText("picture")}</h2>
      <ChartView chart={casePicture(detail, wardCode, id)} after={detail.determination ? "derivation" : "decide"} />
      <ul className="plain-list row picture-key" aria-label={caseText("key")}>
        {(["keyPresent", "keyAbsent", "keyThis", "keyOther", "keyBar"] as const).map((key) => (
          <li key={key}>{caseText(key)}</li>
        ))}
        {signs.map(({ short, sign }) => (
          <li key={short}>{caseText("keySign", { short, sign: signText(sign) })}</li>
        ))}
      </ul>
    </section>
  );
}
