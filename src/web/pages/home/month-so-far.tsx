import type { ReactNode } from "react";
import { readMonth } from "../../../../shared/api/months.ts";
import { month as monthText } from "../../../../shared/day.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { Term } from "../../parts/term.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { cellOf, figureWords, monthWords } from "../../parts/words.ts";
import { homeText } from "../../texts/home.ts";

/** What this month adds up to so far on the viewer's wards. On its first day no census may have been taken yet. */
export function MonthSoFar(): ReactNode {
  const { time, now } = useSession();
  const month = monthText.parse(time.dayOf(now()).slice(0, 7));
  const asked = useAnswer(readMonth, { month });
  const isTooEarly = asked.state === "refused" && asked.problem.code === "in-the-future";
  return (
    <section aria-labelledby="so-far">
      <h2 id="so-far">{homeText("month", { month: monthWords(month) })}</h2>
      {isTooEarly ? (
        <p>{homeText("monthNone")}</p>
      ) : (
        <ShowAnswer asked={asked} what={homeText("monthWhat")}>
          {({ sheet }) => {
            const cell = (key: string) => (sheet.total ? cellOf(sheet, sheet.total, key) : null);
            return (
              <dl className="facts">
                <dt>
                  <Term name="patient-day">{homeText("patientDays")}</Term>
                </dt>
                <dd>{figureWords(cell("patient_days"), "whole")}</dd>
                <dt>
                  <Term name="catheter-day">{homeText("catheterDays")}</Term>
                </dt>
                <dd>{figureWords(cell("catheter_days"), "whole")}</dd>
                <dt>
                  <Term name="utilization" />
                </dt>
                <dd>{figureWords(cell("utilization"), "ratio")}</dd>
              </dl>
            );
          }}
        </ShowAnswer>
      )}
      <p>
        <PageLink to={`/months/${month}`} className="button">
          {homeText("monthOpen")}
        </PageLink>
      </p>
    </section>
  );
}
