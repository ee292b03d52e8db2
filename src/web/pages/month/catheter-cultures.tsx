import type { ReactNode } from "react";
import { readMonthCultures } from "../../../../shared/api/events.ts";
import type { Month } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { SheetCell } from "../../../../shared/sheet.ts";
import { Said } from "../../parts/said.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { cellOf, figureWords } from "../../parts/words.ts";
import { infectionsText as text } from "../../texts/infections.ts";

type Sheet = OutputOf<typeof readMonthCultures>["sheet"];

/** Urine cultures of catheters that were taken without any recorded sign, by ward: a figure of stewardship, no infection. */
export function CatheterCultures({ month }: { month: Month }): ReactNode {
  const asked = useAnswer(readMonthCultures, { month });
  return (
    <ShowAnswer asked={asked} what={text("culturesWhat")}>
      {({ sheet }) => (
        <section className="wide" aria-label={text("culturesScroll")}>
          <table className="ledger">
            <caption>{text("culturesCaption")}</caption>
            <thead>
              <tr>
                {sheet.columns.map(({ key, label, kind }) => (
                  <th key={key} scope="col" className={kind === "text" ? undefined : "figure"}>
                    <Said>{label}</Said>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {sheet.rows.map((row) => (
                <Row key={String(row[0])} {...{ sheet, row }} />
              ))}
            </tbody>
            {sheet.total && (
              <tfoot>
                <Row sheet={sheet} row={sheet.total} />
              </tfoot>
            )}
          </table>
        </section>
      )}
    </ShowAnswer>
  );
}

function Row({ sheet, row }: { sheet: Sheet; row: readonly SheetCell[] }): ReactNode {
  const [first, ...columns] = sheet.columns;
  return (
    <tr>
      <th scope="row">
        <Said>{first && cellOf(sheet, row, first.key)}</Said>
      </th>
      {columns.map(({ key, kind }) => {
        const cell = cellOf(sheet, row, key);
        return kind === "text" ? (
          <td key={key}>
            <Said>{cell ?? ""}</Said>
          </td>
        ) : (
          <td key={key} className="figure">
            {figureWords(cell, kind === "ratio" ? "ratio" : "whole")}
          </td>
        );
      })}
    </tr>
  );
}
