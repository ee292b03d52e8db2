import { type ReactNode, useState } from "react";
import { compareEditions } from "../../../../shared/api/editions.ts";
import { day as dayText } from "../../../../shared/day.ts";
import { type EditionId, editionId, editionNames } from "../../../../shared/edition-words.ts";
import type { InputOf, OutputOf } from "../../../../shared/endpoint.ts";
import { goTo } from "../../parts/address.ts";
import { DaysForm } from "../../parts/days-form.tsx";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { dayWords } from "../../parts/words.ts";
import { editionDifferencesText as text } from "../../texts/edition-differences.ts";

type Question = InputOf<typeof compareEditions>;
type Difference = OutputOf<typeof compareEditions>["differences"][number];

/** Which determinations of some days another edition would make other; what is compared stands in the address. */
export function EditionDifferences({ chosen, question }: { chosen: EditionId; question: URLSearchParams }): ReactNode {
  const asked = askedBy(chosen, question);
  return (
    <section aria-labelledby="differences">
      <h2 id="differences" tabIndex={-1}>
        {text("heading")}
      </h2>
      <p>{text("lead")}</p>
      <DaysToCompare chosen={chosen} asked={asked} />
      {asked && <Differences asked={asked} />}
    </section>
  );
}

/** What the address asks for; null when it does not ask for a comparison, or not for one that can be read. */
function askedBy(chosen: EditionId, question: URLSearchParams): Question | null {
  const other = editionId.safeParse(question.get("other"));
  const [first, last] = ["first", "last"].map((name) => dayText.safeParse(question.get(name)));
  if (!other.success || !first?.success || !last?.success) return null;
  return { editionId: chosen, otherId: other.data, first: first.data, last: last.data };
}

function DaysToCompare({ chosen, asked }: { chosen: EditionId; asked: Question | null }): ReactNode {
  const others = editionId.options.filter((one) => one !== chosen);
  const [other, setOther] = useState<EditionId | null>(asked?.otherId ?? others[0] ?? null);
  return (
    <DaysForm
      name={text("form")}
      labels={{ first: text("first"), last: text("last"), button: text("compare") }}
      asked={asked}
      show={(days) => {
        if (other !== null) goTo(`/rules?${new URLSearchParams({ edition: chosen, other, ...days })}#differences`);
      }}
    >
      <SelectField
        faults={[]}
        pointer="/otherId"
        label={text("other")}
        choices={others.map((one) => ({ value: one, label: editionNames[one] }))}
        value={other}
        change={setOther}
      />
    </DaysForm>
  );
}

function Differences({ asked }: { asked: Question }): ReactNode {
  const answer = useAnswer(compareEditions, asked);
  return (
    <ShowAnswer asked={answer} what={text("what")}>
      {({ compared, differences }) =>
        differences.length === 0 ? (
          <p role="status">{text("none", { count: compared })}</p>
        ) : (
          <DifferenceTable asked={asked} compared={compared} differences={differences} />
        )
      }
    </ShowAnswer>
  );
}

function DifferenceTable(props: { asked: Question; compared: number; differences: readonly Difference[] }): ReactNode {
  const { asked, compared, differences } = props;
  return (
    <div className="wide">
      <table className="ledger">
        <caption>{text("some", { count: differences.length, compared })}</caption>
        <thead>
          <tr>
            <th scope="col">{text("culture")}</th>
            {[asked.editionId, asked.otherId].map((one) => (
              <th key={one} scope="col">
                <Said>{editionNames[one]}</Said>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {differences.map(({ caseId, subject, before, after }) => (
            <tr key={caseId}>
              <th scope="row">
                {/* A finding is a case only where the edition in force for its ward judges findings. */}
                {subject.kind === "specimen" ? (
                  <PageLink to={`/cases/${caseId}`}>{text("ofDay", { day: dayWords(subject.day) })}</PageLink>
                ) : (
                  text("findingOfDay", { day: dayWords(subject.day) })
                )}
              </th>
              <td>{before === null ? text("notJudged") : <Said>{before.summary}</Said>}</td>
              <td>{after === null ? text("notJudged") : <Said>{after.summary}</Said>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
