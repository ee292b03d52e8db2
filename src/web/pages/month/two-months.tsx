import type { ReactNode } from "react";
import { readMonth } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { Sheet, SheetCell } from "../../../../shared/sheet.ts";
import { Said } from "../../parts/said.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { cellOf, figureWords, monthWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";
import { figures } from "./month-table.tsx";

type MonthAnswer = OutputOf<typeof readMonth>;

/** A month's wards with another month's figures beside them: the earlier month stands first. */
export function TwoMonths({ answer, beside }: { answer: MonthAnswer; beside: Month }): ReactNode {
  const asked = useAnswer(readMonth, { month: beside });
  return (
    <ShowAnswer asked={asked} what={text("what", { month: monthWords(beside) })}>
      {(other) => <BothMonths answers={[answer, other].sort((a, b) => (a.month < b.month ? -1 : 1))} />}
    </ShowAnswer>
  );
}

function BothMonths({ answers }: { answers: readonly MonthAnswer[] }): ReactNode {
  const wards = new Map<number, string>();
  for (const { wardIds, sheet } of answers)
    for (const [at, wardId] of wardIds.entries())
      wards.set(wardId, String(cellOf(sheet, sheet.rows[at] ?? [], "ward")));
  const ordered = [...wards].sort(([, a], [, b]) => (a < b ? -1 : 1));
  return (
    <div className="wide">
      <table className="ledger both">
        <caption>{text("bothCaption")}</caption>
        <BothHead answers={answers} />
        <tbody>
          {ordered.map(([wardId, code]) => (
            <tr key={wardId}>
              <th scope="row" className="code">
                <Said>{code}</Said>
              </th>
              <Cells answers={answers} rowOf={({ sheet, wardIds }) => sheet.rows[wardIds.indexOf(wardId)]} />
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">
              <Said>{String(answers[0]?.sheet.total?.[0] ?? "")}</Said>
            </th>
            <Cells answers={answers} rowOf={({ sheet }) => sheet.total ?? undefined} />
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function BothHead({ answers }: { answers: readonly MonthAnswer[] }): ReactNode {
  const sheet: Sheet | undefined = answers[0]?.sheet;
  return (
    <thead>
      <tr>
        <td />
        {figures.map(({ key }) => (
          <th scope="colgroup" colSpan={answers.length} key={key}>
            <Said>{sheet?.columns.find((column) => column.key === key)?.label ?? key}</Said>
          </th>
        ))}
      </tr>
      <tr>
        <th scope="col">{text("ward")}</th>
        {figures.flatMap(({ key }) =>
          answers.map(({ month }) => (
            <th scope="col" className="figure" key={`${key} ${month}`}>
              {monthWords(month)}
            </th>
          )),
        )}
      </tr>
    </thead>
  );
}

/** The figures of one row, month beside month; a ward that a month does not have is missing there. */
function Cells(props: {
  answers: readonly MonthAnswer[];
  rowOf: (answer: MonthAnswer) => readonly SheetCell[] | undefined;
}): ReactNode {
  return figures.flatMap(({ key, kind }) =>
    props.answers.map((answer) => {
      const row = props.rowOf(answer);
      return (
        <td className="figure" key={`${key} ${answer.month}`}>
          {figureWords(row ? cellOf(answer.sheet, row, key) : null, kind)}
        </td>
      );
    }),
  );
}
