import type { ReactNode } from "react";
import { readMonthFigures } from "../../../../shared/api/month-figures.ts";
import { readMonthGaps } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { monthWords } from "../../parts/words.ts";
import { monthText } from "../../texts/month.ts";
import { statisticsText as text } from "../../texts/statistics.ts";
import type { AskedSignatures } from "./changed-since-signed.tsx";
import { Gaps } from "./gaps.tsx";
import { Signature } from "./signature.tsx";
import { Statistics } from "./statistics.tsx";

/** The statistics of a month, what is missing from it, and who signed it. */
export function SignedStatistics(props: { month: Month; told: readonly string[]; signed: AskedSignatures }): ReactNode {
  const { month, told, signed } = props;
  const figures = useAnswer(readMonthFigures, { month });
  const gaps = useAnswer(readMonthGaps, { month });
  return (
    <>
      <ShowAnswer asked={figures} what={text("what", { month: monthWords(month) })}>
        {({ report }) => <Statistics report={report} month={month} told={told} />}
      </ShowAnswer>
      <section aria-labelledby="gaps">
        <h2 id="gaps">{monthText("gaps")}</h2>
        <ShowAnswer asked={gaps} what={monthText("gapsWhat")}>
          {(found) => <Gaps month={found.month} gaps={found.gaps} />}
        </ShowAnswer>
      </section>
      {figures.state === "answered" && gaps.state === "answered" && (
        <Signature {...{ month, signed, seen: figures.value.seen, gaps: gaps.value.gaps, readAgain: figures.again }} />
      )}
    </>
  );
}
