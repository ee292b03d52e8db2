import type { ReactNode } from "react";
import type { Month } from "../../../../shared/day.ts";
import { digitsOf, type FigureKey, figureWords } from "../../../../shared/figure-words.ts";
import type { MonthReport, WardFigures } from "../../../../shared/month-report.ts";
import { NotFinal } from "../../parts/not-final.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { numberWords } from "../../parts/words.ts";
import { statisticsText as text } from "../../texts/statistics.ts";
import { CareRows } from "./care-rows.tsx";
import { WardDays } from "./ward-days.tsx";
import { WardEvents } from "./ward-events.tsx";

/** What opens a figure: the wards that it adds up, or the rows of one ward. */
export interface OpenedFigure {
  readonly figure: FigureKey;
  readonly month: Month;
  readonly report: MonthReport;
  /** null: the wards together. */
  readonly ward: WardFigures | null;
}

/** The rows that a figure was made of: those of its ward, or each ward's own figure where it is of all together. */
export function StatisticRows({ figure, month, report, ward }: OpenedFigure): ReactNode {
  const { may } = useSession();
  if (ward === null) return <WardByWard figure={figure} report={report} />;
  const { wardId, code } = ward;
  const seesPatients = may("see-patients");
  const { rows } = figureWords[figure];
  if (rows === "infections") return <WardEvents month={month} code={code} />;
  if (rows === "care")
    return seesPatients ? <CareRows {...{ wardId, code, month, figure }} /> : <p>{text("noPatients")}</p>;
  return <WardDays {...{ wardId, code, month, seesPatients }} />;
}

function WardByWard({ figure, report }: Pick<OpenedFigure, "figure" | "report">): ReactNode {
  const { label } = figureWords[figure];
  return (
    <table className="ledger inner">
      <caption>{text("byWard")}</caption>
      <thead>
        <tr>
          <th scope="col">{text("ward")}</th>
          <th scope="col" className="figure">
            <Said>{label}</Said>
          </th>
        </tr>
      </thead>
      <tbody>
        {report.wards.map(({ wardId, code, figures }) => {
          const own = figures.find(({ key }) => key === figure);
          const value = own?.value ?? null;
          return (
            <tr key={wardId}>
              <th scope="row">
                <Said>{code}</Said>
              </th>
              <td className="figure">
                {value === null ? <Said>{own?.reason ?? ""}</Said> : numberWords(value, digitsOf(figure))}
                <NotFinal open={own?.open} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
