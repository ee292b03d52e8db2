import type { ReactNode } from "react";
import { readWardCare } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import type { FigureKey } from "../../../../shared/figure-words.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { longDayWords } from "../../parts/words.ts";
import { statisticsText as text } from "../../texts/statistics.ts";

/** The lists of a ward's care that a figure is made of. */
const listsOf = {
  reviews_in_time: ["reviewsInTime", "reviewsLate", "reviewsMissed", "reviewsOverdue"],
  bundle_kept: ["careChecksKept", "careChecksBroken", "careChecksIncomplete"],
  days_past_threshold: ["daysPastThreshold"],
  days_without_indication: ["daysWithoutIndication"],
  days_outside_policy: ["daysOutsidePolicy"],
  days_doubtful: ["daysDoubtful"],
  dwell_median: ["insertions"],
  insertions: ["insertions"],
} as const satisfies Partial<Record<FigureKey, readonly string[]>>;

/** The catheters and days that a ward's figure of care is made of, each with the way to its story. The view is recorded. */
export function CareRows(props: { wardId: number; code: string; month: Month; figure: FigureKey }): ReactNode {
  const { wardId, code, month, figure } = props;
  const asked = useAnswer(readWardCare, { wardId, month });
  const lists = figure in listsOf ? listsOf[figure as keyof typeof listsOf] : [];
  return (
    <ShowAnswer asked={asked} what={text("careWhat")}>
      {({ figures }) => {
        const rows = lists.flatMap((list) =>
          (figures.find((one) => one.figure === list)?.rows ?? []).map((row) => ({ list, ...row })),
        );
        if (rows.length === 0) return <p>{text("careNone", { ward: code })}</p>;
        return (
          <table className="ledger inner">
            <caption>{text("careCaption", { ward: code })}</caption>
            <thead>
              <tr>
                <th scope="col">{text("day")}</th>
                <th scope="col">{text("patient")}</th>
                <th scope="col">{text("countedAs")}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ list, catheterId, patientId, identifier, day }) => (
                <tr key={`${list} ${catheterId} ${day}`}>
                  <th scope="row">{longDayWords(day)}</th>
                  <td>
                    <PageLink to={`/patients/${patientId}/catheters/${catheterId}`}>
                      <Said>{identifier}</Said>
                    </PageLink>
                  </td>
                  <td>{text(list)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        );
      }}
    </ShowAnswer>
  );
}
