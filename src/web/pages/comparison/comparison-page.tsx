import type { ReactNode } from "react";
import { compareWards, readComparisonDocument } from "../../../../shared/api/ward-comparisons.ts";
import { month as monthText } from "../../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../../shared/endpoint.ts";
import { ChartFigure } from "../../parts/chart/chart-figure.tsx";
import { Page } from "../../parts/page.tsx";
import { Sentences } from "../../parts/sentences.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { TakeDocument } from "../../parts/take-document.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { instantWords } from "../../parts/words.ts";
import type { PageProps } from "../../routes.ts";
import { comparisonText as text } from "../../texts/comparison.ts";
import { ComparedWards } from "./compared-wards.tsx";
import { ComparisonFilters } from "./comparison-filters.tsx";
import { TwoWards } from "./two-wards.tsx";

type Comparison = OutputOf<typeof compareWards>;

/** Wards of like type over a period, with charts. What is compared stands in the address. */
export function ComparisonPage({ question }: PageProps): ReactNode {
  const asked = useAnswer(compareWards, askedBy(question));
  return (
    <Page title={text("title")}>
      <ShowAnswer asked={asked} what={text("what")}>
        {(answer) => <Compared key={question.toString()} answer={answer} question={question} />}
      </ShowAnswer>
    </Page>
  );
}

/** What the address asks for; what cannot be read there is left out and shows as the usual choice. */
function askedBy(question: URLSearchParams): InputOf<typeof compareWards> {
  const [from, to] = ["from", "to"].map((name) => monthText.safeParse(question.get(name)));
  const [type, ward] = ["type", "ward"].map((name) => question.get(name));
  return {
    ...(from?.success ? { from: from.data } : {}),
    ...(to?.success ? { to: to.data } : {}),
    ...(type ? { type } : {}),
    ...(ward ? { ward } : {}),
  };
}

function Compared({ answer, question }: { answer: Comparison; question: URLSearchParams }): ReactNode {
  const { facility } = useSession();
  const { charts, cautions, sources, wards, asOf } = answer;
  return (
    <>
      <ComparisonFilters answer={answer} />
      <p className="small">{text("readOn", { when: instantWords(asOf, facility.zone) })}</p>
      <TakeDocument
        endpoint={readComparisonDocument}
        input={askedBy(question)}
        name={`wards-${answer.from}-${answer.to}`}
      />
      <Sentences id="cautions" title={text("cautions")} sentences={cautions} />
      {wards.length === 0 ? <p className="notice">{text("none")}</p> : <ComparedWards answer={answer} />}
      {wards.length > 0 && charts.map((chart) => <ChartFigure key={chart.input.id} chart={chart} />)}
      {wards.length > 0 && <TwoWards answer={answer} question={question} />}
      <Sentences id="sources" title={text("sources")} sentences={sources} />
    </>
  );
}
