import { type ReactNode, useEffect } from "react";
import { readFacility } from "../../../shared/api/facility.ts";
import { readMonth } from "../../../shared/api/months.ts";
import { readMe } from "../../../shared/api/people.ts";
import { type Month, month as monthText } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { goTo } from "../parts/address.ts";
import { Frame } from "../parts/frame.tsx";
import { MonthPicker, monthAddress } from "../parts/month-picker.tsx";
import { MonthTable } from "../parts/month-table.tsx";
import { ShowAnswer } from "../parts/show-answer.tsx";
import { useAnswer } from "../parts/use-answer.ts";
import { cellOf, instantWords, monthWords } from "../parts/words.ts";

type Facility = OutputOf<typeof readFacility>;
type MonthAnswer = OutputOf<typeof readMonth>;

/** A month of the facility. Without a month in the address it goes to the one that it is now in the facility. */
export function MonthPage({ asked }: { asked: Month | null }): ReactNode {
  const facility = useAnswer(readFacility, {});
  const current = facility.state === "answered" ? monthText.parse(facility.value.today.slice(0, 7)) : null;
  useEffect(() => {
    if (asked === null && current !== null) goTo(monthAddress(current), { replace: true });
  }, [asked, current]);
  const title = asked === null ? "Patient-days and catheter-days" : monthWords(asked);
  const name =
    facility.state === "answered"
      ? `${facility.value.name}${facility.value.demo ? " (demo: nobody in it exists)" : ""}`
      : undefined;
  return (
    <Frame title={title} facility={name}>
      <ShowAnswer asked={facility} what="the facility">
        {(value) => asked !== null && current !== null && <MonthOf facility={value} month={asked} current={current} />}
      </ShowAnswer>
    </Frame>
  );
}

function MonthOf(props: { facility: Facility; month: Month; current: Month }): ReactNode {
  const { facility, month, current } = props;
  const answer = useAnswer(readMonth, { month });
  const me = useAnswer(readMe, {});
  return (
    <>
      <MonthPicker month={month} latest={current} />
      <ShowAnswer asked={me} what="what you may see">
        {({ permissions }) => (
          <ShowAnswer asked={answer} what={`the figures of ${monthWords(month)}`}>
            {(value) => (
              <MonthSheet answer={value} zone={facility.zone} seesPatients={permissions.includes("see-patients")} />
            )}
          </ShowAnswer>
        )}
      </ShowAnswer>
    </>
  );
}

function MonthSheet(props: { answer: MonthAnswer; zone: string; seesPatients: boolean }): ReactNode {
  const { answer, zone, seesPatients } = props;
  const { sheet } = answer;
  if (sheet.rows.length === 0) {
    return (
      <p className="notice">
        There is no ward that you may see. Wards come with the first import, and an administrator says who belongs to
        them.
      </p>
    );
  }
  const isEmpty = sheet.rows.every((row) => !cellOf(sheet, row, "patient_days"));
  return (
    <>
      <p className="small">
        {sheet.title}. Read on {instantWords(sheet.asOf, zone)}.{" "}
        <span className="on-screen">
          <a href="#cautions">Cautions and sources</a> stand below.
        </span>
      </p>
      {isEmpty && (
        <p className="notice">
          No patient was counted in this month. If there were patients, their moves were not recorded, or their wards
          have no setting.
        </p>
      )}
      <MonthTable answer={answer} seesPatients={seesPatients} />
      <Sentences id="cautions" title="Cautions" sentences={sheet.cautions} />
      <Sentences id="sources" title="Sources" sentences={sheet.sources} />
    </>
  );
}

function Sentences(props: { id: string; title: string; sentences: readonly string[] }): ReactNode {
  const { id, title, sentences } = props;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
