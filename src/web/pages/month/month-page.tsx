import type { ReactNode } from "react";
import { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import { readMonth } from "../../../../shared/api/months.ts";
import { type Month, month as monthText } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Page } from "../../parts/page.tsx";
import { Said } from "../../parts/said.tsx";
import { Sentences } from "../../parts/sentences.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { cellOf, instantWords, monthWords } from "../../parts/words.ts";
import type { PageProps } from "../../routes.ts";
import { monthText as text } from "../../texts/month.ts";
import { UnknownPage } from "../unknown-page.tsx";
import { ChangedSinceSigned } from "./changed-since-signed.tsx";
import { Infections } from "./infections.tsx";
import { MonthPicker } from "./month-picker.tsx";
import { MonthTable } from "./month-table.tsx";
import { SignedStatistics } from "./signed-statistics.tsx";
import { TakeAway } from "./take-away.tsx";
import { TwoMonths } from "./two-months.tsx";

type MonthAnswer = OutputOf<typeof readMonth>;

/** A month of the facility. Without a month in the address it is the one that it is now in the facility. */
export function MonthPage({ found, question }: PageProps): ReactNode {
  const { facility, time, now } = useSession();
  const current = monthText.parse(time.dayOf(now()).slice(0, 7));
  const read = monthText.safeParse(found.month ?? current);
  if (!read.success) return <UnknownPage />;
  const month = read.data;
  const asked = monthText.safeParse(question.get("beside"));
  const beside = asked.success && asked.data !== month ? asked.data : null;
  return (
    <Page key={month} title={monthWords(month)}>
      <MonthPicker month={month} latest={current} beside={beside} />
      <MonthOf month={month} zone={facility.zone} beside={beside} />
    </Page>
  );
}

function MonthOf({ month, zone, beside }: { month: Month; zone: string; beside: Month | null }): ReactNode {
  const answer = useAnswer(readMonth, { month });
  const seesPatients = useSession().may("see-patients");
  return (
    <ShowAnswer asked={answer} what={text("what", { month: monthWords(month) })}>
      {(value) => <MonthSheet answer={value} {...{ zone, seesPatients, beside }} again={answer.again} />}
    </ShowAnswer>
  );
}

function MonthSheet(props: {
  answer: MonthAnswer;
  zone: string;
  seesPatients: boolean;
  beside: Month | null;
  again: () => void;
}): ReactNode {
  const { answer, zone, seesPatients, beside, again } = props;
  const { sheet } = answer;
  const signed = useAnswer(readMonthSignatures, { month: answer.month });
  if (sheet.rows.length === 0) {
    return <p className="notice">{text("noWards")}</p>;
  }
  const isEmpty = sheet.rows.every((row) => !cellOf(sheet, row, "patient_days"));
  return (
    <>
      <p className="small">
        <Said>{sheet.title}.</Said> {text("readOn", { when: instantWords(sheet.asOf, zone) })}{" "}
        <span className="on-screen">
          {text("below")} <a href="#cautions">{text("toCautions")}</a>.
        </span>
      </p>
      {isEmpty && <p className="notice">{text("empty")}</p>}
      {beside === null && <ChangedSinceSigned asked={signed} />}
      {beside === null ? (
        <MonthTable answer={answer} seesPatients={seesPatients} />
      ) : (
        <TwoMonths answer={answer} beside={beside} />
      )}
      <TakeAway month={answer.month} />
      <Infections answer={answer} again={again} />
      {beside === null && <SignedStatistics {...{ signed, month: answer.month, told: sheet.cautions }} />}
      <Sentences id="cautions" title={text("cautions")} sentences={sheet.cautions} />
      <Sentences id="sources" title={text("sources")} sentences={sheet.sources} />
    </>
  );
}
